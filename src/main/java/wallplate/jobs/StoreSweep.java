package wallplate.jobs;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;
import wallplate.records.StoredNames;

/**
 * Clears out of the scan store what no record refers to.
 *
 * <p>Content is put into the store before a record refers to it, so that a crash between the two leaves something over and
 * never leaves something out. What was put or put again within the last day is left alone, because its record may still be on
 * its way.
 */
@Component
class StoreSweep {

    private static final Logger LOG = LoggerFactory.getLogger(StoreSweep.class);
    private static final Duration YOUNG = Duration.ofDays(1);
    private static final int ASKED_AT_ONCE = 500;

    private final ScanStore store;
    private final StoredNames names;
    private final Clock clock;

    StoreSweep(ScanStore store, StoredNames names, Clock clock) {
        this.store = store;
        this.names = names;
        this.clock = clock;
    }

    /** Returns how many contents it cleared out. */
    int sweep() throws IOException {
        Instant before = clock.instant().minus(YOUNG);
        List<String> old = new ArrayList<>();
        store.forEachPutBefore(before, old::add);
        int cleared = 0;
        for (int from = 0; from < old.size(); from += ASKED_AT_ONCE) {
            cleared += clear(old.subList(from, Math.min(old.size(), from + ASKED_AT_ONCE)));
        }
        if (cleared > 0) {
            LOG.info("cleared {} contents out of the scan store that no record refers to", cleared);
        }
        return cleared;
    }

    private int clear(List<String> old) throws IOException {
        Set<String> left = new HashSet<>(old);
        left.removeAll(names.inUse(old));
        for (String name : left) {
            store.delete(name);
        }
        return left.size();
    }
}
