package wallplate.marksheets;

import java.math.BigDecimal;
import java.util.List;

/** What a person gives to begin a mark sheet. */
public record NewMarkSheet(
        long classId,
        String title,
        String className,
        String schoolYear,
        String term,
        int latePercent,
        List<Task> tasks,
        String createdBy) {

    public NewMarkSheet {
        tasks = List.copyOf(tasks);
        if (tasks.isEmpty()) {
            throw new IllegalArgumentException("a mark sheet has at least one task");
        }
        if (latePercent < 0 || latePercent > 100) {
            throw new IllegalArgumentException("a late sheet loses from 0 to 100 hundredths, not " + latePercent);
        }
    }

    /** A class set that counts, and how much. */
    public record Task(long classSetId, String title, BigDecimal weight) {}
}
