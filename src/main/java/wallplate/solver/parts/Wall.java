package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The outside wall, cut through, hatched and broken off below. */
public final class Wall implements Part {

    /** How much of the wall is shown below its top at least, in millimetres on paper. */
    private static final double LEAST_SHOWN = 25;

    /** How much of it is shown at most: a steep roof's eaves may hang lower than any sheet. */
    private static final double MOST_SHOWN = 60;

    /** How far the wall goes on below the lowest of the eaves, in millimetres on paper. */
    private static final double BELOW_EAVES = 8;

    /** How far the break at the bottom runs past both faces, in millimetres on paper. */
    private static final double BREAK_OVERRUN = 2;

    @Override
    public String name() {
        return "wall";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double outer = frame.outerWallX();
        double inner = frame.innerWallX();
        double top = frame.wallTopY();
        double bottom = breakY(frame);
        Point outerTop = outerTop(frame);
        Lines lines = new Lines(name())
                .cut("outer", new Point(outer, bottom), outerTop)
                .cut("inner", new Point(inner, bottom), new Point(inner, top))
                .cut("top", new Point(topStartX(frame), top), new Point(inner, top))
                .broken("break", new Point(outer - BREAK_OVERRUN, bottom), new Point(inner + BREAK_OVERRUN, bottom));
        if (topStartX(frame) > outer) {
            lines.cut("splay", outerTop, new Point(topStartX(frame), top));
        }
        return lines.hatched(Hatching.within(outline(frame), List.of(), Hatching.WIDE))
                .all();
    }

    private static List<Point> outline(RoofFrame frame) {
        double inner = frame.innerWallX();
        double bottom = breakY(frame);
        List<Point> corners = new ArrayList<>(List.of(
                new Point(frame.outerWallX(), bottom), new Point(inner, bottom), new Point(inner, frame.wallTopY())));
        if (topStartX(frame) > frame.outerWallX()) {
            corners.add(new Point(topStartX(frame), frame.wallTopY()));
        }
        corners.add(outerTop(frame));
        return corners;
    }

    /** Where the level top begins: at the outer face, or where the rafter's underside rises through that level. */
    private static double topStartX(RoofFrame frame) {
        return Math.min(0, Math.max(frame.outerWallX(), frame.wallTopY() / frame.tangent()));
    }

    /** The top of the outer face, cut back under the rafter where its underside lies lower. */
    static Point outerTop(RoofFrame frame) {
        double outer = frame.outerWallX();
        return new Point(outer, Math.min(frame.wallTopY(), frame.slopeY(outer, 0)));
    }

    /** Where the walls of the section are broken off below. */
    public static double breakY(RoofFrame frame) {
        double top = outerTop(frame).y();
        double pastEaves = Math.min(top - LEAST_SHOWN, lowestOfEaves(frame) - BELOW_EAVES);
        return Math.max(top - MOST_SHOWN, pastEaves);
    }

    private static double lowestOfEaves(RoofFrame frame) {
        double lowest = frame.slopeY(frame.plumbCutX(), 0);
        if (frame.has("fascia")) {
            lowest = Math.min(lowest, frame.fasciaTopY() - frame.mm("fascia.depth"));
        }
        if (frame.has("gutter")) {
            lowest = Math.min(lowest, frame.gutterRimY() - frame.mm("gutter.depth"));
        }
        if (frame.has("barge-board")) {
            double bargeTop = frame.slopeY(frame.bargeEndX(), frame.coveringTop());
            lowest = Math.min(lowest, bargeTop - frame.mm("barge-board.depth"));
        }
        return lowest;
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(MeasuredKey.of(
                "wall.thickness",
                Kind.SECTION_SIZE,
                "wall.thickness",
                "thickness of the wall",
                "level, between the faces of the wall"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(frame.stated("wall.thickness", "wall.thickness"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        List<DrawnLine> lines = lines(frame);
        Step faces = Step.of(
                        "Draw the wall",
                        ("Measure %s level from the outer face to the inside and draw the inner"
                                                + " face. Draw the wall's top %s below the")
                                        .formatted(frame.drawn("wall.thickness"), frame.drawn("wall-plate.depth"))
                                + " level line, and break the wall off some way down.")
                .calculate(frame.working("wall", "wall.thickness"))
                .calculate(frame.working("wall plate, depth", "wall-plate.depth"))
                .faint(new Point(frame.innerWallX(), breakY(frame)), new Point(frame.innerWallX(), 0))
                .lineIn(lines, "outer", "inner", "top", "break");
        Step hatching = Step.of(
                        "Hatch the wall",
                        "Hatch the wall, which is cut, with parallel lines at 45 degrees, about 3 mm apart.%s"
                                .formatted(
                                        topStartX(frame) > frame.outerWallX()
                                                ? " Over its outer part it ends under the rafter."
                                                : ""))
                .lineIn(lines, "splay", "hatch");
        return List.of(faces, hatching);
    }
}
