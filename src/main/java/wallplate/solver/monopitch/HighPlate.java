package wallplate.solver.monopitch;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;
import wallplate.solver.parts.Lines;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.Step;
import wallplate.solver.parts.Working;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** The wall plate on the high wall, cut across the grain, flush with the wall's inner face. */
final class HighPlate implements Part {

    @Override
    public String name() {
        return "high-plate";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double inner = HighWall.innerX(frame);
        double outer = inner + frame.mm("high-plate.width");
        double top = HighWall.plateTopY(frame);
        double bottom = top - frame.mm("high-plate.depth");
        Point innerTop = new Point(inner, top);
        Point innerBottom = new Point(inner, bottom);
        Point outerBottom = new Point(outer, bottom);
        Point outerTop = new Point(outer, top);
        return new Lines(name())
                .cut("inner", innerBottom, innerTop)
                .cut("outer", outerBottom, outerTop)
                .cut("top", innerTop, outerTop)
                .crossed(innerTop, innerBottom, outerBottom, outerTop)
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "high-plate.width",
                        Kind.SECTION_SIZE,
                        "high-plate.width",
                        "width of the high plate",
                        "level, between its upright sides"),
                MeasuredKey.of(
                        "high-plate.depth",
                        Kind.SECTION_SIZE,
                        "high-plate.depth",
                        "depth of the high plate",
                        "upright, from the top of the high wall to the top of the plate"),
                MeasuredKey.derived(
                        "high-plate.rise",
                        Kind.LENGTH,
                        "rise from the low to the high plate",
                        "upright, from the low plate's top to the high plate's top",
                        "roof.pitch",
                        "wall.thickness",
                        "wall-plate.width",
                        "high-wall.clear-span"),
                MeasuredKey.derived(
                        "high-plate.crossed",
                        Kind.YES_NO,
                        "diagonals of the high plate",
                        "both diagonals of its outline are there"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("high-plate.width", "high-plate.width"),
                frame.stated("high-plate.depth", "high-plate.depth"),
                rise(frame),
                new Expected.YesNo("high-plate.crossed", true));
    }

    private static Expected.Length rise(RoofFrame frame) {
        double run = realRun(frame);
        double rise = run * frame.tangent();
        String before = "run %s x tan %s° = %s mm; "
                .formatted(PlainNumber.text(run, 1), PlainNumber.text(frame.pitchDegrees()), PlainNumber.text(rise, 1));
        return Working.length("high-plate.rise", rise, frame.scale(), before);
    }

    /** From the heel point to the high plate's inner corner, level, in real millimetres. */
    static double realRun(RoofFrame frame) {
        Sizes sizes = frame.task().sizes();
        double setIn = frame.setIn() * frame.scale().denominator();
        return sizes.number("wall.thickness") - setIn + sizes.number("high-wall.clear-span");
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double inner = HighWall.innerX(frame);
        double top = HighWall.plateTopY(frame);
        return List.of(Step.of(
                        "Draw the high plate",
                        ("The rafter's underside crosses the high wall's inner face at the high"
                                                + " plate's top inner corner, %s above the")
                                        .formatted(RoofFrame.drawnMm(top))
                                + (" low plate's top. Draw the plate %s wide and %s deep from there,"
                                                + " and both its diagonals.")
                                        .formatted(frame.drawn("high-plate.width"), frame.drawn("high-plate.depth")))
                .calculate("rise: " + rise(frame).working())
                .calculate(frame.working("width", "high-plate.width"))
                .calculate(frame.working("depth", "high-plate.depth"))
                .faint(new Point(inner, top), new Point(inner + frame.mm("high-plate.width"), top))
                .lineIn(lines(frame)));
    }
}
