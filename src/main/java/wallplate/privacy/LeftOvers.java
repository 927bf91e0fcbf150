package wallplate.privacy;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;
import wallplate.records.StoredNames;

/** Contents of the scan store that records have let go of. */
@Component
public class LeftOvers {

    private static final int ASKED_AT_ONCE = 500;

    private final ScanStore store;
    private final StoredNames names;

    LeftOvers(ScanStore store, StoredNames names) {
        this.store = store;
        this.names = names;
    }

    /** Deletes those that no record refers to any more; the same content may be that of another set. */
    public void clear(List<String> contents) throws IOException {
        for (int from = 0; from < contents.size(); from += ASKED_AT_ONCE) {
            List<String> some = contents.subList(from, Math.min(contents.size(), from + ASKED_AT_ONCE));
            Set<String> left = new HashSet<>(some);
            left.removeAll(names.inUse(some));
            for (String name : left) {
                store.delete(name);
            }
        }
    }
}
