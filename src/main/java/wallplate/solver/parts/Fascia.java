package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The fascia, upright against the rafter's plumb cut, its top against the covering's underside. */
public final class Fascia implements Part {

    @Override
    public String name() {
        return "fascia";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("fascia");
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double outer = frame.eavesFaceX();
        double inner = frame.plumbCutX();
        double top = frame.fasciaTopY();
        double bottom = top - frame.mm("fascia.depth");
        return new Lines(name())
                .cut("outer", new Point(outer, bottom), new Point(outer, top))
                .cut("inner", new Point(inner, bottom), new Point(inner, top))
                .cut("top", new Point(outer, top), new Point(inner, top))
                .cut("bottom", new Point(outer, bottom), new Point(inner, bottom))
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "fascia.thickness",
                        Kind.SECTION_SIZE,
                        "fascia.thickness",
                        "thickness of the fascia",
                        "level, between its upright sides"),
                MeasuredKey.of(
                        "fascia.depth",
                        Kind.SECTION_SIZE,
                        "fascia.depth",
                        "depth of the fascia",
                        "upright, from its bottom to its top"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("fascia.thickness", "fascia.thickness"), frame.stated("fascia.depth", "fascia.depth"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double top = frame.fasciaTopY();
        return List.of(Step.of(
                        "Draw the fascia",
                        ("Draw the fascia upright on the outside of the plumb cut, %s wide and %s"
                                        + " deep, its top against the covering's underside.")
                                .formatted(frame.drawn("fascia.thickness"), frame.drawn("fascia.depth")))
                .calculate(frame.working("thickness", "fascia.thickness"))
                .calculate(frame.working("depth", "fascia.depth"))
                .faint(
                        new Point(frame.eavesFaceX(), top - frame.mm("fascia.depth")),
                        new Point(frame.eavesFaceX(), top))
                .lineIn(lines(frame)));
    }
}
