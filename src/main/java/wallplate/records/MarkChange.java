package wallplate.records;

import java.time.Instant;
import java.util.Optional;
import wallplate.marking.Verdict;

/**
 * What a person decided about one mark.
 *
 * @param verdict empty where the guideline's own mark was given back
 * @param changedBy who decided, as far as it is known
 */
public record MarkChange(
        String criterion, Optional<Verdict> verdict, double awarded, String reason, String changedBy, Instant changedAt) {}
