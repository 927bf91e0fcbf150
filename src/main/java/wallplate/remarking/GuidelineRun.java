package wallplate.remarking;

import java.time.Instant;

/**
 * A guideline that was laid over a whole set.
 *
 * @param sheets how many were marked again
 * @param sheetsChanged on how many of them a mark changed
 */
public record GuidelineRun(
        String fromVersion, String toVersion, int sheets, int sheetsChanged, String appliedBy, Instant appliedAt) {}
