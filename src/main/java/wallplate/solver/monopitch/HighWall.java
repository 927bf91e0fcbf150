package wallplate.solver.monopitch;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;
import wallplate.solver.parts.Hatching;
import wallplate.solver.parts.Lines;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.Step;
import wallplate.solver.parts.Wall;

/** The high wall of a lean-to roof, cut through and hatched; its inner face is the one towards the low wall. */
final class HighWall implements Part {

    private static final double BREAK_OVERRUN = 2;

    @Override
    public String name() {
        return "high-wall";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    /** The inner face, over which the high plate's top inner corner lies. */
    static double innerX(RoofFrame frame) {
        return frame.innerWallX() + frame.mm("high-wall.clear-span");
    }

    static double outerX(RoofFrame frame) {
        return innerX(frame) + frame.mm("high-wall.thickness");
    }

    /** The level of the high plate's top: the rafter's underside over the inner face. */
    static double plateTopY(RoofFrame frame) {
        return frame.slopeY(innerX(frame), 0);
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double inner = innerX(frame);
        double outer = outerX(frame);
        double top = plateTopY(frame) - frame.mm("high-plate.depth");
        double bottom = Math.min(Wall.breakY(frame), top);
        List<Point> outline = List.of(
                new Point(inner, bottom), new Point(outer, bottom), new Point(outer, top), new Point(inner, top));
        return new Lines(name())
                .cut("inner", outline.get(0), outline.get(3))
                .cut("outer", outline.get(1), outline.get(2))
                .cut("top", outline.get(3), outline.get(2))
                .broken("break", new Point(inner - BREAK_OVERRUN, bottom), new Point(outer + BREAK_OVERRUN, bottom))
                .hatched(Hatching.within(outline, List.of(), Hatching.WIDE))
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "high-wall.clear-span",
                        Kind.LENGTH,
                        "high-wall.clear-span",
                        "clear span between the walls",
                        "level, between the walls' inner faces"),
                MeasuredKey.of(
                        "high-wall.thickness",
                        Kind.SECTION_SIZE,
                        "high-wall.thickness",
                        "thickness of the high wall",
                        "level, between the faces of the wall"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("high-wall.clear-span", "high-wall.clear-span"),
                frame.stated("high-wall.thickness", "high-wall.thickness"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double inner = innerX(frame);
        return List.of(Step.of(
                        "Draw the high wall",
                        ("Measure %s level from the low wall's inner face for the inner face of the"
                                                + " high wall, and %s further for its far")
                                        .formatted(
                                                frame.drawn("high-wall.clear-span"), frame.drawn("high-wall.thickness"))
                                + " face. Its top lies under the high plate. Hatch it at 45 degrees, about 3 mm apart.")
                .calculate(frame.working("clear span", "high-wall.clear-span"))
                .calculate(frame.working("high wall", "high-wall.thickness"))
                .faint(new Point(inner, 0), new Point(inner, plateTopY(frame)))
                .lineIn(lines(frame)));
    }
}
