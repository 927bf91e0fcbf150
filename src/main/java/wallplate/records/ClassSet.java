package wallplate.records;

import java.time.Instant;
import java.util.Optional;
import wallplate.task.DrawingTask;

/**
 * The sheets that one class drew for one task.
 *
 * @param task the task as it was when the set was made
 * @param releasedAt when its marks were released to the learners; empty while they are not
 * @param demonstration whether it is the invented set that the program brings along
 */
public record ClassSet(
        long id,
        String title,
        long classId,
        String className,
        long taskId,
        DrawingTask task,
        boolean demonstration,
        Instant createdAt,
        Optional<Instant> releasedAt) {}
