package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
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
        return List.of(MeasuredKey.of(
                "roof.pitch",
                Kind.ANGLE,
                "pitch",
                "pitch of the roof",
                "between the rafter's edges and the drawing's level lines"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        String working =
                "%s°: an angle is the same at every scale".formatted(PlainNumber.text(frame.pitchDegrees(), 3));
        return List.of(new Expected.Angle("roof.pitch", frame.pitchDegrees(), working));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double outermost = Math.min(
                frame.eavesX(), Covering.end(frame, frame.coveringTop()).x());
        double lowest = Wall.breakY(frame);
        double highest = frame.slopeY(frame.insideX(), frame.coveringTop());
        Step step = Step.of(
                        "Place the drawing on the sheet",
                        "Draw a faint level line for the top of the wall plate and a faint upright for the outer face"
                                + " of the wall, so that the whole drawing stands in the middle of the"
                                + " sheet. " + heel(frame))
                .calculate("width of the drawing: about " + RoofFrame.drawnMm(frame.insideX() - outermost))
                .calculate("height of the drawing: about " + RoofFrame.drawnMm(highest - lowest))
                .faint(new Point(outermost, 0), new Point(frame.insideX(), 0))
                .faint(new Point(frame.outerWallX(), lowest), new Point(frame.outerWallX(), 0));
        return List.of(step);
    }

    private static String heel(RoofFrame frame) {
        return frame.setIn() == 0
                ? "Where they cross is the heel point: the top outer corner of the wall plate."
                : ("Mark the heel point, the top outer corner of the wall plate, on the level line,"
                                + " %s inside the wall's face.")
                        .formatted(RoofFrame.drawnMm(frame.setIn()));
    }
}
