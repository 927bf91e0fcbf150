package wallplate.solver;

import java.util.List;
import wallplate.solver.brief.BriefRules;
import wallplate.task.DrawingTask;

/**
 * Checks a brief that could be read for what is possible but unusual.
 *
 * <p>Wherever its answer is shown, {@link Caution#TEXT} is shown with it.
 */
public final class BriefCheck {

    private BriefCheck() {}

    /** Every advice on the task, each naming its source; empty where all is usual. */
    public static List<Advice> check(DrawingTask task) {
        ExpectedDrawing drawing = Solver.solve(task);
        return BriefRules.all().stream().flatMap(rule -> rule.advice(drawing)).toList();
    }
}
