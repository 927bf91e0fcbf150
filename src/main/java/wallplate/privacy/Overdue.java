package wallplate.privacy;

import java.time.Instant;
import java.util.List;

/** Data that is over its time. */
public interface Overdue {

    /**
     * What of a kind is over its time.
     *
     * @param number how much of it there is
     * @param oldest addresses or ids of the oldest; no names
     */
    record Found(long number, List<String> oldest) {
        public Found {
            oldest = List.copyOf(oldest);
        }
    }

    /** What of a kind is older than a moment. */
    Found of(Kind kind, Instant before, int mostAddresses);

    /**
     * Takes it away, within a transaction.
     *
     * @return how much was taken away, and the names of contents in the scan store that may be left over
     */
    Removed remove(Kind kind, Instant before);

    /** What was taken away. */
    record Removed(long number, List<String> contents) {
        public Removed {
            contents = List.copyOf(contents);
        }
    }
}
