package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;

/** The upright break line that cuts the drawing off on the inside. */
public final class BreakLine implements Part {

    private static final double BELOW = 5;
    private static final double ABOVE = 3;

    @Override
    public String name() {
        return "break";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double x = frame.insideX();
        double lowest = frame.has("ceiling") ? -frame.mm("ceiling.brander.depth") - frame.mm("ceiling.board") : 0;
        double highest = frame.slopeY(x, frame.coveringTop());
        return new Lines(name())
                .broken("break", new Point(x, lowest - BELOW), new Point(x, highest + ABOVE))
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
        return List.of(Step.of(
                        "Draw the break line",
                        ("Measure %s level from the outer wall face to the inside and draw the"
                                                + " upright break line, thin. Everything that runs to")
                                        .formatted(frame.drawn("break-line.inside"))
                                + " the inside ends at it.")
                .calculate(frame.working("distance", "break-line.inside"))
                .lineIn(lines(frame)));
    }
}
