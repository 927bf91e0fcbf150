package wallplate.drafting.layout;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.LineRole;

/** The lines of a detail, found by part, index and edge. */
final class DetailLines {

    private final List<DrawnLine> lines;
    private final Map<EdgeName, Segment> edges = new HashMap<>();

    DetailLines(List<DrawnLine> lines) {
        this.lines = List.copyOf(lines);
        for (DrawnLine line : lines) {
            edges.merge(
                    new EdgeName(line.part(), line.index(), line.edge()),
                    line.segment(),
                    (one, other) -> other.length() > one.length() ? other : one);
        }
    }

    private record EdgeName(String part, int index, String edge) {}

    List<DrawnLine> all() {
        return lines;
    }

    Box bounds() {
        return Box.around(lines.stream().map(DrawnLine::segment).toList());
    }

    /** The longest line with that name. */
    Optional<Segment> edge(String part, int index, String edge) {
        return Optional.ofNullable(edges.get(new EdgeName(part, index, edge)));
    }

    /** A part's lines other than hatching and diagonals, by the index of the part. */
    Map<Integer, List<DrawnLine>> outlines(String part) {
        return lines.stream()
                .filter(line -> line.part().equals(part))
                .filter(line -> line.role() != LineRole.HATCH && line.role() != LineRole.DIAGONAL)
                .collect(Collectors.groupingBy(DrawnLine::index, TreeMap::new, Collectors.toList()));
    }

    /** The middle of each of several like parts, in the order of their indexes. */
    List<Point> centres(String part) {
        return outlines(part).values().stream().map(DetailLines::middle).toList();
    }

    private static Point middle(List<DrawnLine> outline) {
        double x = 0;
        double y = 0;
        for (DrawnLine line : outline) {
            x += line.segment().midpoint().x();
            y += line.segment().midpoint().y();
        }
        return new Point(x / outline.size(), y / outline.size());
    }

    /** How low the drawing reaches at a place across; empty where nothing is drawn there. */
    OptionalDouble lowestAt(double x) {
        return lines.stream()
                .map(DrawnLine::segment)
                .filter(segment -> spans(segment, x))
                .mapToDouble(segment -> heightAt(segment, x))
                .min();
    }

    private static boolean spans(Segment segment, double x) {
        double reach = 0.05;
        return Math.min(segment.start().x(), segment.end().x()) - reach <= x
                && x <= Math.max(segment.start().x(), segment.end().x()) + reach;
    }

    private static double heightAt(Segment segment, double x) {
        double run = segment.end().x() - segment.start().x();
        if (Math.abs(run) < 0.1) {
            return Math.min(segment.start().y(), segment.end().y());
        }
        double fraction = Math.max(0, Math.min(1, (x - segment.start().x()) / run));
        return segment.at(fraction).y();
    }
}
