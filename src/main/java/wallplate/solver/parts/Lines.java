package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.LineRole;

/** Collects the lines of one part; lines without length are left out, since nobody can draw them. */
final class Lines {

    private final String part;
    private final int index;
    private final List<DrawnLine> lines = new ArrayList<>();

    Lines(String part) {
        this(part, 0);
    }

    Lines(String part, int index) {
        this.part = part;
        this.index = index;
    }

    Lines cut(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.CUT_OUTLINE);
    }

    Lines seen(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.SEEN_OUTLINE);
    }

    Lines broken(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.BREAK);
    }

    /** The two diagonals of timber cut across the grain; the first starts at the first corner. */
    Lines crossed(Point first, Point second, Point third, Point fourth) {
        add(index, "cross1", new Segment(first, third), LineRole.DIAGONAL);
        return add(index, "cross2", new Segment(second, fourth), LineRole.DIAGONAL);
    }

    /** Hatching strokes, counted from 0. */
    Lines hatched(List<Segment> strokes) {
        for (int i = 0; i < strokes.size(); i++) {
            add(i, "hatch", strokes.get(i), LineRole.HATCH);
        }
        return this;
    }

    List<DrawnLine> all() {
        return List.copyOf(lines);
    }

    private Lines add(int number, String edge, Segment segment, LineRole role) {
        if (segment.length() > 0) {
            lines.add(new DrawnLine(part, number, edge, segment, role));
        }
        return this;
    }
}
