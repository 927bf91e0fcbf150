package wallplate.records;

import java.time.Instant;
import java.util.Optional;

/**
 * A scan file that was handed in for a class set.
 *
 * @param position its place among the files of the set, from 1
 * @param contentHash the name of its content in the scan store
 */
public record ScanFileEntry(
        long id,
        long classSetId,
        int position,
        String fileName,
        String contentHash,
        long sizeBytes,
        FileState state,
        Optional<String> reason,
        Instant receivedAt) {}
