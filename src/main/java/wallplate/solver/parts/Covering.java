package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The roof covering on its supports, from beyond the toe to the inside end of the drawing. */
public final class Covering implements Part {

    @Override
    public String name() {
        return "covering";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        Point lowerEnd = end(frame, frame.coveringUnderside());
        Point upperEnd = end(frame, frame.coveringTop());
        double inside = frame.insideX();
        return new Lines(name())
                .cut("bottom", lowerEnd, frame.onSlope(inside, frame.coveringUnderside()))
                .cut("top", upperEnd, frame.onSlope(inside, frame.coveringTop()))
                .cut("end", lowerEnd, upperEnd)
                .all();
    }

    /** The outer end of the covering, square to the slope, at a height above the rafter's underside. */
    static Point end(RoofFrame frame, double aboveUnderside) {
        return frame.toe()
                .plus(frame.alongSlope().times(-frame.mm("covering.projection")))
                .plus(frame.squareToSlope().times(aboveUnderside - frame.rafterTop()));
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "covering.thickness",
                        Kind.SECTION_SIZE,
                        "covering.thickness",
                        "thickness of the covering",
                        "square to the slope"),
                MeasuredKey.derived(
                        "covering.gap",
                        Kind.LENGTH,
                        "distance of the covering from the rafter",
                        "square to the slope, from the rafter's top to the covering's underside",
                        "support.depth"),
                MeasuredKey.of(
                        "covering.projection",
                        Kind.LENGTH,
                        "covering.projection",
                        "projection of the covering",
                        "along the slope, beyond the toe, where the rafter's top meets its plumb cut"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        double gap = frame.task().sizes().number("support.depth");
        return List.of(
                frame.stated("covering.thickness", "covering.thickness"),
                Working.length("covering.gap", gap, frame.scale(), "the depth of the supports: "),
                frame.stated("covering.projection", "covering.projection"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        String name = frame.task().sizes().word("covering.name").orElse("covering");
        return List.of(Step.of(
                        "Draw the covering",
                        ("Draw the underside of the %s along the tops of the %ss, and its top %s"
                                                + " above, square to the slope. It starts %s")
                                        .formatted(
                                                name,
                                                frame.supportName(),
                                                frame.drawn("covering.thickness"),
                                                frame.drawn("covering.projection"))
                                + " beyond the toe, measured along the slope.")
                .calculate(frame.working("thickness", "covering.thickness"))
                .calculate(frame.working("projection", "covering.projection"))
                .faint(end(frame, frame.rafterTop()), end(frame, frame.coveringTop()))
                .lineIn(lines(frame)));
    }
}
