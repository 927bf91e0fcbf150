package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/**
 * The line ends of a drawing that can be looked at for overshooting or gaping: an outline ends at another there, and no line of
 * the drawing runs on behind it. Which they are follows from the expected drawing alone.
 */
final class Corners {

    /**
     * One end.
     *
     * @param line the outline that ends, such as {@code fascia.bottom}
     * @param at the outline that it ends at
     */
    record Corner(String line, String at) {}

    private static final double SAME_PLACE_MM = 0.05;
    private static final double[] BEHIND_MM = {0.8, 1.2, 1.6, 2, 2.5};
    private static final double CLEAR_MM = 0.5;

    private Corners() {}

    static List<Corner> of(ExpectedDrawing drawing) {
        List<DrawnLine> outlines = drawing.lines().stream()
                .filter(line -> line.role() == LineRole.CUT_OUTLINE || line.role() == LineRole.SEEN_OUTLINE)
                .toList();
        List<Corner> corners = new ArrayList<>();
        for (DrawnLine line : outlines) {
            if (line.index() == 0) {
                addEnd(corners, drawing, outlines, line, line.segment().start(), line.segment().end());
                addEnd(corners, drawing, outlines, line, line.segment().end(), line.segment().start());
            }
        }
        return corners;
    }

    private static void addEnd(
            List<Corner> corners, ExpectedDrawing drawing, List<DrawnLine> outlines, DrawnLine line, Point end, Point from) {
        Vector outwards = end.minus(from).unit();
        boolean isClear = drawing.lines().stream().filter(other -> other != line).noneMatch(other -> isBehind(other, end, outwards));
        outlines.stream()
                .filter(other -> other != line && other.index() == 0 && endsAt(other, end) && !runsAlong(other, outwards))
                .limit(isClear ? 1 : 0)
                .forEach(other -> corners.add(new Corner(name(line), name(other))));
    }

    private static boolean isBehind(DrawnLine other, Point end, Vector outwards) {
        for (double behind : BEHIND_MM) {
            if (other.segment().distanceTo(end.plus(outwards.times(behind))) < CLEAR_MM) {
                return true;
            }
        }
        return false;
    }

    private static boolean endsAt(DrawnLine other, Point place) {
        Segment segment = other.segment();
        return segment.start().distanceTo(place) < SAME_PLACE_MM || segment.end().distanceTo(place) < SAME_PLACE_MM;
    }

    private static boolean runsAlong(DrawnLine other, Vector direction) {
        return Math.abs(other.segment().vector().unit().cross(direction)) < 0.3;
    }

    private static String name(DrawnLine line) {
        return line.part() + "." + line.edge();
    }
}
