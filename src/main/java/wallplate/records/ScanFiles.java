package wallplate.records;

import java.util.List;
import java.util.Optional;

/** The files that were handed in, and how far each has been read. */
public interface ScanFiles {

    /** The file, or nothing where the set has a file with the same content already. */
    Optional<ScanFileEntry> add(long classSetId, String fileName, String contentHash, long sizeBytes);

    Optional<ScanFileEntry> find(long id);

    List<ScanFileEntry> of(long classSetId);

    /** Says that a file is being opened and read; false where it is not to be read, because it was stopped or is done. */
    boolean begin(long id);

    void finish(long id);

    void refuse(long id, String reason);

    /** Stops the reading of what has not been read yet; pages that are being read are read to their end. */
    void stop(long classSetId);

    /** The files that were stopped, put back into the queue. */
    List<ScanFileEntry> takeUpAgain(long classSetId);
}
