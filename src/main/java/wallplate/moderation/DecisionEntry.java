package wallplate.moderation;

import java.time.Instant;

/**
 * A decision as it was written down.
 *
 * @param outcome what it did to the marks, in sentences
 */
public record DecisionEntry(Decision decision, String reason, String decidedBy, Instant decidedAt, String outcome) {}
