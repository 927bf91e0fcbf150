package wallplate.marksheets;

import java.time.Instant;
import java.util.Optional;

/**
 * What a mark sheet is about.
 *
 * @param classId empty where the class is no longer kept
 * @param schoolYear empty where the class is the list of one set
 * @param latePercent what a late sheet loses, in hundredths of the marks that it could have had; from 0 to 100
 * @param submission empty while it is a draft
 */
public record Heading(
        long id,
        Optional<Long> classId,
        String title,
        String className,
        String schoolYear,
        String term,
        int latePercent,
        String createdBy,
        Instant createdAt,
        Optional<Submission> submission) {

    public boolean isDraft() {
        return submission.isEmpty();
    }
}
