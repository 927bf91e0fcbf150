package wallplate.jobs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;

/** Reads the pages of one file, one after another, and keeps what each gave. */
@Component
class FileReading {

    /** A sheet that has been begun this often without coming to an end is set aside. */
    private static final int MOST_ATTEMPTS = 2;

    private static final Logger LOG = LoggerFactory.getLogger(FileReading.class);

    private final ScanFiles files;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final ScanStore store;
    private final SheetKeeper keeper;

    FileReading(ScanFiles files, ClassSets classSets, Sheets sheets, ScanStore store, SheetKeeper keeper) {
        this.files = files;
        this.classSets = classSets;
        this.sheets = sheets;
        this.store = store;
        this.keeper = keeper;
    }

    /** Reads what has not been read of a file; does nothing where it was stopped or is done. */
    void read(long fileId) {
        if (!files.begin(fileId)) {
            return;
        }
        ScanFileEntry file = files.find(fileId).orElseThrow();
        ClassSet classSet = classSets.find(file.classSetId()).orElseThrow();
        try {
            visitPages(file, classSet);
            files.finish(fileId);
        } catch (ReadingStopped stopped) {
            LOG.info("file {} was stopped", fileId);
        } catch (IOException broken) {
            LOG.warn("file {} cannot be taken out of the scan store", fileId, broken);
            throw new UncheckedIOException(broken);
        }
    }

    private void visitPages(ScanFileEntry file, ClassSet classSet) throws IOException {
        Path folder = Files.createTempDirectory("wallplate-");
        Path copy = folder.resolve("scan");
        try {
            store.copyTo(file.contentHash(), copy);
            ScanFile.forEachPage(file.fileName(), copy, page -> visit(file, classSet, page));
        } finally {
            Files.deleteIfExists(copy);
            Files.deleteIfExists(folder);
        }
    }

    private void visit(ScanFileEntry file, ClassSet classSet, ScanPage page) {
        if (isStopped(file)) {
            throw new ReadingStopped();
        }
        SheetEntry sheet = sheets.page(file.id(), page.page());
        if (sheet.state().isFinished()) {
            return;
        }
        int attempt = sheets.beginReading(sheet.id());
        if (attempt > MOST_ATTEMPTS) {
            sheets.fail(sheet.id(), "Reading this sheet stopped the program twice. It was set aside so that the others go on.");
            return;
        }
        try {
            AssessedSheet assessed = keeper.assess(page, classSet.task());
            keeper.keep(sheet.id(), assessed);
        } catch (IOException | RuntimeException broken) {
            LOG.warn("sheet {} could not be read or kept", sheet.id(), broken);
            sheets.fail(
                    sheet.id(),
                    "The program itself failed on this sheet. The scan is kept; the program's log has the details.");
        }
    }

    private boolean isStopped(ScanFileEntry file) {
        return files.find(file.id())
                .filter(now -> now.state() == FileState.READING)
                .isEmpty();
    }

    /** Leaves the pages of a file whose reading a person stopped. */
    private static final class ReadingStopped extends RuntimeException {

        ReadingStopped() {
            super("the reading was stopped", null, false, false);
        }
    }
}
