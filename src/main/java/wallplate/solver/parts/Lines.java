package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.LineRole;

/** Collects the lines of one part; lines without length are left out, since nobody can draw them. */
public final class Lines {

    private final String part;
    private final int index;
    private final List<DrawnLine> lines = new ArrayList<>();

    public Lines(String part) {
        this(part, 0);
    }

    public Lines(String part, int index) {
        this.part = part;
        this.index = index;
    }

    public Lines cut(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.CUT_OUTLINE);
    }

    public Lines seen(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.SEEN_OUTLINE);
    }

    public Lines broken(String edge, Point from, Point to) {
        return add(index, edge, new Segment(from, to), LineRole.BREAK);
    }

    /** The two diagonals of timber cut across the grain; the first starts at the first corner. */
    public Lines crossed(Point first, Point second, Point third, Point fourth) {
        add(index, "cross1", new Segment(first, third), LineRole.DIAGONAL);
        return add(index, "cross2", new Segment(second, fourth), LineRole.DIAGONAL);
    }

    /** Hatching strokes, counted from 0. */
    public Lines hatched(List<Segment> strokes) {
        for (int i = 0; i < strokes.size(); i++) {
            add(i, "hatch", strokes.get(i), LineRole.HATCH);
        }
        return this;
    }

    public List<DrawnLine> all() {
        return List.copyOf(lines);
    }

    private Lines add(int number, String edge, Segment segment, LineRole role) {
        if (segment.length() > 0) {
            lines.add(new DrawnLine(part, number, edge, segment, role));
        }
        return this;
    }
}
