package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;
import wallplate.task.PlainNumber;

/** The roof as a whole: its pitch, which has no lines of its own. */
public final class Roof implements Part {

    @Override
    public String name() {
        return "roof";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        return List.of();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of("roof.pitch", Kind.ANGLE, "pitch", "pitch of the roof", "between the rafter's edges and the drawing's level lines"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        String working = "%s°: an angle is the same at every scale".formatted(PlainNumber.text(frame.pitchDegrees(), 3));
        return List.of(new Expected.Angle("roof.pitch", frame.pitchDegrees(), working));
    }
}
