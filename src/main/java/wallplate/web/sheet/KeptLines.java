package wallplate.web.sheet;

import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import wallplate.geometry.Segment;
import wallplate.measure.LinesByHand;
import wallplate.records.ClassSet;
import wallplate.records.SheetCorrection;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetEntry;
import wallplate.sheet.LevelPage;

/**
 * The lines that can be chosen on the sheets looked at last, found once and kept in memory.
 *
 * <p>Finding them takes a second or more, so that it begins, on a thread of its own, when a sheet is opened on which
 * something is left to decide, and a page of lines need not wait for it. A sheet's picture is named by its content, and
 * with it what is kept here.
 */
@Component
class KeptLines {

    private static final Logger LOG = LoggerFactory.getLogger(KeptLines.class);

    /** Each holds the ink of a page, about six megabytes. */
    private static final int MOST_PAGES = 6;

    private final SheetCorrecting correcting;
    private final SheetCorrections corrections;
    private final Map<Page, CompletableFuture<Found>> kept = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Page, CompletableFuture<Found>> eldest) {
            return size() > MOST_PAGES;
        }
    };

    /** Of sheets that are opened one after another, only the last is worth the work. */
    private final ThreadPoolExecutor ahead = new ThreadPoolExecutor(
            1,
            1,
            0,
            TimeUnit.SECONDS,
            new ArrayBlockingQueue<>(1),
            task -> {
                Thread thread = new Thread(task, "lines ahead");
                thread.setDaemon(true);
                return thread;
            },
            new ThreadPoolExecutor.DiscardOldestPolicy());

    KeptLines(SheetCorrecting correcting, SheetCorrections corrections) {
        this.correcting = correcting;
        this.corrections = corrections;
    }

    /** A level page: the picture as it was read, and the ticks by which its millimetres were corrected. */
    private record Page(String picture, Optional<SheetCorrection> scale) {}

    /** Lines for one key on a page of this size. */
    record Lines(double widthMm, double heightMm, List<Segment> choices) {}

    private static final class Found {

        private final LevelPage page;
        private final Optional<LinesByHand> lines;
        private final Map<String, List<Segment>> byKey = new ConcurrentHashMap<>();

        Found(LevelPage page) {
            this.page = page;
            this.lines = LinesByHand.on(page);
        }

        boolean has(String key) {
            return byKey.containsKey(key);
        }

        Lines lines(String key) {
            List<Segment> choices = byKey.computeIfAbsent(
                    key, wanted -> lines.map(all -> all.choices(wanted)).orElse(List.of()));
            return new Lines(page.ink().widthMm(), page.ink().heightMm(), choices);
        }
    }

    /** The lines for a key; empty where they would have to be looked for first. */
    Optional<Lines> ready(SheetEntry sheet, String key) {
        CompletableFuture<Found> there;
        synchronized (kept) {
            there = kept.get(page(sheet));
        }
        return there == null || !there.isDone() || there.isCompletedExceptionally() || !there.join().has(key)
                ? Optional.empty()
                : Optional.of(there.join().lines(key));
    }

    /** The lines for a key, looked for where they are not there yet. */
    Lines of(ClassSet classSet, SheetEntry sheet, String key) throws IOException {
        return found(classSet, sheet).lines(key);
    }

    /** Looks for the lines of these keys while the person looks at the sheet. */
    void lookAhead(ClassSet classSet, SheetEntry sheet, List<String> keys) {
        List<String> wanted = keys.stream()
                .filter(LinesByHand::isFor)
                .filter(key -> ready(sheet, key).isEmpty())
                .toList();
        if (!wanted.isEmpty()) {
            ahead.execute(() -> look(classSet, sheet, wanted));
        }
    }

    private void look(ClassSet classSet, SheetEntry sheet, List<String> keys) {
        try {
            Found found = found(classSet, sheet);
            keys.forEach(found::lines);
        } catch (IOException | RuntimeException failed) {
            // Nobody waits for it: who asks for the lines is told then.
            LOG.warn("the lines of sheet {} could not be looked for ahead", sheet.id(), failed);
        }
    }

    private Found found(ClassSet classSet, SheetEntry sheet) throws IOException {
        Page page = page(sheet);
        CompletableFuture<Found> mine = new CompletableFuture<>();
        CompletableFuture<Found> there;
        synchronized (kept) {
            there = kept.putIfAbsent(page, mine);
        }
        if (there != null) {
            return waitedFor(there);
        }
        try {
            Found found = new Found(correcting
                    .page(correcting.asRead(classSet, sheet), sheet)
                    .page());
            mine.complete(found);
            return found;
        } catch (IOException | RuntimeException failed) {
            synchronized (kept) {
                kept.remove(page);
            }
            mine.completeExceptionally(failed);
            throw failed;
        }
    }

    private static Found waitedFor(CompletableFuture<Found> there) throws IOException {
        try {
            return there.join();
        } catch (CompletionException failed) {
            throw new IOException("the lines of this sheet cannot be found", failed.getCause());
        }
    }

    private Page page(SheetEntry sheet) {
        List<SheetCorrection> standing = new ArrayList<>(SheetCorrections.standing(corrections.of(sheet.id())));
        standing.removeIf(one -> one.key().isPresent());
        return new Page(
                corrections.asReadPicture(sheet.id()).orElseThrow(), standing.stream().findFirst());
    }

    @PreDestroy
    void close() {
        ahead.shutdownNow();
    }
}
