package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** Parallel strokes at 45 degrees, rising to the inside, within a convex outline. */
public final class Hatching {

    /**
     * Between strokes, square to them, in millimetres on paper. Section lines stand 1.6 to 3.2 mm apart (US Navy,
     * NAVEDTRA 14276, section lines: 1/16 to 1/8 inch); learners draw them at the wide end.
     */
    public static final double WIDE = 3;

    /** The same for small surfaces, which one or two wide strokes would not show as hatched. */
    public static final double NARROW = 2;

    /** Strokes shorter than this, in millimetres on paper, are left out: a pencil makes a dot of them. */
    private static final double SHORTEST = 0.5;

    /** Strokes in one outline; a larger one, which no sheet could hold, is hatched wider. */
    private static final int MOST = 400;

    private static final Vector DIRECTION = Vector.atDegrees(45);

    private Hatching() {}

    /**
     * The strokes within a convex outline, and outside every one of the convex holes.
     *
     * @param outline corners anticlockwise
     * @param holes each with its corners anticlockwise
     * @param spacing between strokes, square to them
     */
    public static List<Segment> within(List<Point> outline, List<List<Point>> holes, double spacing) {
        DoubleSummaryStatistics across = outline.stream()
                .mapToDouble(corner -> DIRECTION.leftNormal().dot(corner.minus(Point.ORIGIN)))
                .summaryStatistics();
        double extent = across.getMax() - across.getMin();
        int count = (int) Math.max(1, Math.min(MOST, Math.floor(extent / spacing)));
        double gap = Math.max(spacing, extent / MOST);
        double middle = (across.getMin() + across.getMax()) / 2;
        List<Segment> strokes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double offset = middle + (i - (count - 1) / 2.0) * gap;
            Line line = new Line(Point.ORIGIN.plus(DIRECTION.leftNormal().times(offset)), DIRECTION);
            pieces(line, outline, holes).stream()
                    .filter(piece -> piece.to - piece.from >= SHORTEST)
                    .forEach(piece -> strokes.add(line.between(piece.from, piece.to)));
        }
        return strokes;
    }

    private record Interval(double from, double to) {
        boolean isEmpty() {
            return from >= to;
        }
    }

    private static List<Interval> pieces(Line line, List<Point> outline, List<List<Point>> holes) {
        List<Interval> pieces = new ArrayList<>(List.of(inside(line, outline)));
        for (List<Point> hole : holes) {
            Interval gap = inside(line, hole);
            if (gap.isEmpty()) {
                continue;
            }
            List<Interval> left = new ArrayList<>();
            for (Interval piece : pieces) {
                left.add(new Interval(piece.from, Math.min(piece.to, gap.from)));
                left.add(new Interval(Math.max(piece.from, gap.to), piece.to));
            }
            pieces = left;
        }
        pieces.removeIf(Interval::isEmpty);
        return pieces;
    }

    /** The stretch of the line inside a convex outline, by cutting off what lies right of each of its sides. */
    private static Interval inside(Line line, List<Point> outline) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        for (int i = 0; i < outline.size(); i++) {
            Point corner = outline.get(i);
            Vector side = outline.get((i + 1) % outline.size()).minus(corner);
            double rate = side.cross(line.direction());
            double atOrigin = side.cross(line.origin().minus(corner));
            if (rate > 0) {
                from = Math.max(from, -atOrigin / rate);
            } else if (rate < 0) {
                to = Math.min(to, -atOrigin / rate);
            } else if (atOrigin < 0) {
                return new Interval(0, 0);
            }
        }
        return new Interval(from, to);
    }
}
