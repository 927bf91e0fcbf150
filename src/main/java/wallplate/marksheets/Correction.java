package wallplate.marksheets;

import java.time.Instant;

/**
 * What was put in place of an entry after the mark sheet was submitted.
 *
 * @param line of the learner, from 1
 * @param place of the task, from 1
 */
public record Correction(int line, int place, Entry entry, String reason, String correctedBy, Instant correctedAt) {}
