package wallplate.solver;

import java.util.List;
import wallplate.geometry.Segment;

/**
 * One step of drawing a detail by hand.
 *
 * @param number from 1, in the order of drawing
 * @param part the part that it draws, such as {@code rafter}
 * @param title in a few words
 * @param calculation the arithmetic before the pencil is taken up, one line each; may be empty
 * @param instruction what to measure from where and what to draw, to the learner
 * @param faint construction lines of this step, in the detail's own axes in paper millimetres
 * @param linedIn the lines that stay, in the detail's own axes
 */
public record ConstructionStep(
        int number,
        String part,
        String title,
        List<String> calculation,
        String instruction,
        List<Segment> faint,
        List<DrawnLine> linedIn) {

    public ConstructionStep {
        calculation = List.copyOf(calculation);
        faint = List.copyOf(faint);
        linedIn = List.copyOf(linedIn);
    }
}
