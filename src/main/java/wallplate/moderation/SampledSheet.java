package wallplate.moderation;

import java.time.Instant;
import java.util.Optional;

/**
 * A sheet of a sample, without any mark.
 *
 * @param place its place in the sample, from 1
 * @param markedAt when it was marked a second time; empty while it was not
 */
public record SampledSheet(int place, long sheetId, Optional<Instant> markedAt) {}
