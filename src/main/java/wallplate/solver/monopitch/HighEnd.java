package wallplate.solver.monopitch;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.parts.Lines;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.Step;

/** The plumb end of rafter and covering over the far face of the high wall. */
final class HighEnd implements Part {

    @Override
    public String name() {
        return "high-end";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double x = frame.insideX();
        return new Lines(name())
                .seen("cut", frame.onSlope(x, 0), frame.onSlope(x, frame.rafterTop()))
                .cut("covering", frame.onSlope(x, frame.coveringUnderside()), frame.onSlope(x, frame.coveringTop()))
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of();
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of();
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double x = frame.insideX();
        return List.of(Step.of(
                        "End the roof at the high wall",
                        "Carry the far face of the high wall up and end the rafter and the covering plumb on it.")
                .faint(frame.onSlope(x, 0), frame.onSlope(x, frame.coveringTop()))
                .lineIn(lines(frame)));
    }
}
