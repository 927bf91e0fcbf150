package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

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
                MeasuredKey.of("rafter.depth", Kind.SECTION_SIZE, "rafter.depth", "depth of the rafter", "square to the slope, between its edges"),
                MeasuredKey.derived("rafter.heel-offset", Kind.LENGTH, "distance of the rafter's underside from the heel point", "square to the slope, from the plate's top outer corner to the rafter's underside"),
                MeasuredKey.of("rafter.overhang", Kind.LENGTH, "rafter.overhang", "overhang of the rafter", "level, from the outer wall face to the rafter's plumb cut"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("rafter.depth", "rafter.depth"),
                new Expected.Length(
                        "rafter.heel-offset", 0, 0, 0, "the rafter's underside passes through the heel point: 0 mm"),
                frame.stated("rafter.overhang", "rafter.overhang"));
    }
}
