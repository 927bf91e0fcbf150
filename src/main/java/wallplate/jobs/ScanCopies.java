package wallplate.jobs;

import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;
import wallplate.records.ScanStore;

/**
 * Copies of scan files on this machine, so that the pages of one file do not fetch it from the store again and again.
 *
 * <p>The few used last are kept; a copy that is in use is never taken away.
 */
@Component
class ScanCopies {

    private static final int MOST_UNUSED = 3;

    private final ScanStore store;
    private final Path folder;
    /** By content hash, in the order of use. */
    private final Map<String, Copy> copies = new LinkedHashMap<>(16, 0.75f, true);

    ScanCopies(ScanStore store) throws IOException {
        this.store = store;
        this.folder = Files.createTempDirectory("wallplate-copies-");
    }

    /** Work on a copy; the copy must not be used after it. */
    interface Work<T> {
        T on(Path copy) throws IOException;
    }

    <T> T with(String contentHash, Work<T> work) throws IOException {
        Copy copy = taken(contentHash);
        try {
            return work.on(copy.fetched(store));
        } finally {
            release(copy);
        }
    }

    private synchronized Copy taken(String contentHash) {
        Copy copy = copies.computeIfAbsent(contentHash, hash -> new Copy(hash, folder.resolve(hash)));
        copy.users++;
        return copy;
    }

    private synchronized void release(Copy copy) throws IOException {
        copy.users--;
        long unused = copies.values().stream().filter(each -> each.users == 0).count();
        for (Iterator<Copy> oldest = copies.values().iterator(); unused > MOST_UNUSED && oldest.hasNext(); ) {
            Copy old = oldest.next();
            if (old.users == 0) {
                oldest.remove();
                Files.deleteIfExists(old.path);
                unused--;
            }
        }
    }

    @PreDestroy
    void clear() throws IOException {
        FileSystemUtils.deleteRecursively(folder);
    }

    /** One copy; whoever comes first fetches it, the others wait for that. */
    private static final class Copy {

        private final String contentHash;
        private final Path path;
        private int users;
        private boolean there;

        Copy(String contentHash, Path path) {
            this.contentHash = contentHash;
            this.path = path;
        }

        synchronized Path fetched(ScanStore store) throws IOException {
            if (!there) {
                Files.createDirectories(path.getParent());
                Files.deleteIfExists(path);
                store.copyTo(contentHash, path);
                there = true;
            }
            return path;
        }
    }
}
