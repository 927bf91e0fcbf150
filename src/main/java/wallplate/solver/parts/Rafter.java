package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;
import wallplate.task.PlainNumber;

/** The rafter, its underside through the heel point, between its plumb cut and the inside end of the drawing. */
public final class Rafter implements Part {

    @Override
    public String name() {
        return "rafter";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double outer = frame.plumbCutX();
        double inside = frame.insideX();
        double top = frame.rafterTop();
        return new Lines(name())
                .seen("bottom", frame.onSlope(outer, 0), frame.onSlope(inside, 0))
                .seen("top", frame.onSlope(outer, top), frame.onSlope(inside, top))
                .seen("cut", frame.onSlope(outer, 0), frame.onSlope(outer, top))
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "rafter.depth",
                        Kind.SECTION_SIZE,
                        "rafter.depth",
                        "depth of the rafter",
                        "square to the slope, between its edges"),
                MeasuredKey.derived(
                        "rafter.heel-offset",
                        Kind.LENGTH,
                        "distance of the rafter's underside from the heel point",
                        "square to the slope, from the plate's top outer corner to the rafter's underside"),
                MeasuredKey.of(
                        "rafter.overhang",
                        Kind.LENGTH,
                        "rafter.overhang",
                        "overhang of the rafter",
                        "level, from the outer wall face to the rafter's plumb cut"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("rafter.depth", "rafter.depth"),
                new Expected.Length(
                        "rafter.heel-offset", 0, 0, 0, "the rafter's underside passes through the heel point: 0 mm"),
                frame.stated("rafter.overhang", "rafter.overhang"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double outer = frame.plumbCutX();
        double inside = frame.insideX();
        List<DrawnLine> lines = lines(frame);
        Step underside = Step.of(
                        "Set out the pitch",
                        ("Lay the protractor's base on the level line, its centre on the heel"
                                                + " point, and mark %s°. Draw the rafter's")
                                        .formatted(PlainNumber.text(frame.pitchDegrees(), 2))
                                + " underside through the heel point at that slope, in both directions.")
                .faint(frame.onSlope(outer, 0), frame.onSlope(inside, 0))
                .lineIn(lines, "bottom");
        Step top = Step.of(
                        "Draw the rafter",
                        ("Measure %s square to the slope from the underside, not upright, and draw"
                                                + " the top parallel to it. Measure the")
                                        .formatted(frame.drawn("rafter.depth"))
                                + " overhang of %s level from the outer wall face, and draw the plumb cut there."
                                        .formatted(frame.drawn("rafter.overhang")))
                .calculate(frame.working("depth", "rafter.depth"))
                .calculate(frame.working("overhang", "rafter.overhang"))
                .faint(
                        new Point(outer, frame.slopeY(outer, 0)),
                        new Point(outer, frame.slopeY(outer, frame.coveringTop())))
                .lineIn(lines, "top", "cut");
        return List.of(underside, top);
    }
}
