package wallplate.records;

import java.time.Instant;
import wallplate.task.DrawingTask;

/**
 * A drawing task as it is kept.
 *
 * @param yaml the task file, as it is exported
 * @param learnerCode what a learner types at home to check a drawing of this task
 * @param marksShown whether the learner sees marks beside the advice when checking at home
 */
public record KeptTask(
        long id, DrawingTask task, String yaml, String learnerCode, boolean marksShown, Instant changedAt) {}
