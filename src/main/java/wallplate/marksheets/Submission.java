package wallplate.marksheets;

import java.time.Instant;

/** Who submitted a mark sheet, and when: from then on it is frozen. */
public record Submission(String submittedBy, Instant submittedAt) {}
