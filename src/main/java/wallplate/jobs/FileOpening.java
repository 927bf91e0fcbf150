package wallplate.jobs;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Readings;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPages;

/** Looks into a file that was handed in: counts its pages and queues each, or takes out the scans that it holds. */
@Component
class FileOpening {

    /** A file that has been begun this often without coming to an end is set aside. */
    private static final int MOST_OPENINGS = 2;

    private final ScanFiles files;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final Readings readings;
    private final ScanStore store;
    private final ScanCopies copies;
    private final ReadingQueue queue;
    private final TransactionOperations together;

    FileOpening(
            ScanFiles files,
            ClassSets classSets,
            Sheets sheets,
            Readings readings,
            ScanStore store,
            ScanCopies copies,
            ReadingQueue queue,
            TransactionOperations together) {
        this.files = files;
        this.classSets = classSets;
        this.sheets = sheets;
        this.readings = readings;
        this.store = store;
        this.copies = copies;
        this.queue = queue;
        this.together = together;
    }

    /**
     * Does nothing where the file was stopped, is done or is gone.
     *
     * @throws IOException where the store did not give or take what was asked
     */
    void open(long fileId) throws IOException {
        if (!files.begin(fileId)) {
            return;
        }
        if (readings.openings(fileId) > MOST_OPENINGS) {
            giveUp(fileId, "Opening this file stopped the program twice. It was set aside so that the others go on.");
            return;
        }
        boolean ended = false;
        try {
            ScanFileEntry file = files.find(fileId).orElseThrow();
            open(file, classSets.find(file.classSetId()).orElseThrow());
            ended = true;
        } finally {
            if (!ended) {
                readings.handBackFile(fileId);
            }
        }
    }

    private void open(ScanFileEntry file, ClassSet classSet) throws IOException {
        switch (ScanPages.kindOf(start(file))) {
            case SINGLE -> queuePages(file, classSet, 1);
            case MANY -> queuePages(file, classSet, copies.with(file.contentHash(), ScanPages::count));
            case ARCHIVE -> unpack(file, classSet);
        }
    }

    /** Sets the sheets of a file aside that nobody can open. */
    void giveUp(long fileId, String reason) {
        readings.open(fileId, 1).forEach(sheetId -> sheets.fail(sheetId, reason));
        readings.finishWhereRead(fileId);
    }

    private byte[] start(ScanFileEntry file) throws IOException {
        try (InputStream content = store.open(file.contentHash())) {
            return content.readNBytes(ScanPages.BYTES_NEEDED);
        }
    }

    /** In one step, so that no page is known without a job that reads it. */
    private void queuePages(ScanFileEntry file, ClassSet classSet, int pages) {
        together.executeWithoutResult(step -> {
            queue.addSheets(classSet.classId(), readings.open(file.id(), pages));
            readings.finishWhereRead(file.id());
        });
    }

    /** Scans that were taken out before a crash are noticed by their content, as in any upload. */
    private void unpack(ScanFileEntry archive, ClassSet classSet) throws IOException {
        AtomicInteger refused = new AtomicInteger();
        copies.with(archive.contentHash(), path -> {
            ScanPages.unpack(
                    archive.fileName(),
                    path,
                    (name, content) -> takeOut(classSet, name, content),
                    page -> refuse(archive, page, refused.incrementAndGet()));
            return path;
        });
        readings.unpacked(archive.id());
    }

    private void takeOut(ClassSet classSet, String name, byte[] content) {
        ScanStore.Kept kept;
        try {
            kept = store.put(new ByteArrayInputStream(content));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        together.executeWithoutResult(step -> files.add(classSet.id(), name, kept.name(), kept.sizeBytes())
                .ifPresent(file -> {
                    sheets.page(file.id(), 1);
                    queue.add(file);
                }));
    }

    private void refuse(ScanFileEntry archive, ScanPage page, int number) {
        SheetEntry sheet = sheets.page(archive.id(), number);
        if (!sheet.state().isFinished() && page.content() instanceof ScanPage.Refused refused) {
            String reason = page.scan().equals(archive.fileName())
                    ? refused.reason()
                    : page.scan() + ": " + refused.reason();
            sheets.refuse(sheet.id(), reason, "{}");
        }
    }
}
