package wallplate.web.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;
import wallplate.report.PageTiles;

/**
 * The tiles of the page pictures looked at last, cut once and kept in memory.
 *
 * <p>In memory only, so that a scan that is deleted leaves nothing behind on a disk.
 */
@Component
class KeptTiles {

    /** About three hundred sheets. */
    private static final long MOST_BYTES = 48_000_000;

    private final ScanStore store;
    private final Map<String, CompletableFuture<PageTiles>> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long bytes;

    KeptTiles(ScanStore store) {
        this.store = store;
    }

    /**
     * @throws IOException where the store has no such picture
     */
    PageTiles of(String name) throws IOException {
        CompletableFuture<PageTiles> mine = new CompletableFuture<>();
        CompletableFuture<PageTiles> there;
        synchronized (kept) {
            there = kept.putIfAbsent(name, mine);
        }
        if (there != null) {
            return waitedFor(there);
        }
        try (InputStream content = store.open(name)) {
            PageTiles tiles = PageTiles.of(content.readAllBytes());
            mine.complete(tiles);
            added(tiles);
            return tiles;
        } catch (IOException | RuntimeException failed) {
            synchronized (kept) {
                kept.remove(name);
            }
            mine.completeExceptionally(failed);
            throw failed;
        }
    }

    private static PageTiles waitedFor(CompletableFuture<PageTiles> there) throws IOException {
        try {
            return there.join();
        } catch (CompletionException failed) {
            throw new IOException("the picture cannot be cut", failed.getCause());
        }
    }

    private void added(PageTiles tiles) {
        synchronized (kept) {
            bytes += tiles.bytes();
            var oldest = kept.values().iterator();
            while (bytes > MOST_BYTES && oldest.hasNext()) {
                CompletableFuture<PageTiles> candidate = oldest.next();
                if (candidate.isDone()) {
                    bytes -= candidate.join().bytes();
                    oldest.remove();
                }
            }
        }
    }
}
