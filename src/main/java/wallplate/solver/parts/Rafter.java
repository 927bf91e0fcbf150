package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;

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
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("rafter.depth", "rafter.depth"),
                new Expected.Length(
                        "rafter.heel-offset", 0, 0, 0, "the rafter's underside passes through the heel point: 0 mm"),
                frame.stated("rafter.overhang", "rafter.overhang"));
    }
}
