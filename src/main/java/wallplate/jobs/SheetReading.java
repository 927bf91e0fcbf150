package wallplate.jobs;

import java.io.IOException;
import java.util.Optional;
import org.slf4j.MDC;
import org.springframework.stereotype.Component;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
import wallplate.records.Readings;
import wallplate.records.ScanFileEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPages;

/** Reads one sheet and keeps what it gave. */
@Component
class SheetReading {

    /** A sheet that has been begun this often without coming to an end is set aside. */
    private static final int MOST_ATTEMPTS = 2;

    private final Sheets sheets;
    private final Readings readings;
    private final ClassSets classSets;
    private final ScanCopies copies;
    private final SheetKeeper keeper;
    private final InHand inHand;

    SheetReading(
            Sheets sheets,
            Readings readings,
            ClassSets classSets,
            ScanCopies copies,
            SheetKeeper keeper,
            InHand inHand) {
        this.sheets = sheets;
        this.readings = readings;
        this.classSets = classSets;
        this.copies = copies;
        this.keeper = keeper;
        this.inHand = inHand;
    }

    /**
     * Does nothing where the sheet has been read, its file was stopped or it is gone.
     *
     * @throws IOException where the store did not give or take what was asked; the sheet waits again
     */
    void read(long sheetId) throws IOException {
        Optional<ScanFileEntry> file = readings.fileOf(sheetId).filter(SheetReading::isWanted);
        if (file.isEmpty()) {
            return;
        }
        MDC.put("sheet", Long.toString(sheetId));
        MDC.put("classSet", Long.toString(file.get().classSetId()));
        try {
            readUnlessFinished(sheets.find(sheetId).orElseThrow(), file.get());
            readings.finishWhereRead(file.get().id());
        } finally {
            MDC.remove("sheet");
            MDC.remove("classSet");
        }
    }

    private static boolean isWanted(ScanFileEntry file) {
        return file.state() == FileState.READING;
    }

    private void readUnlessFinished(SheetEntry sheet, ScanFileEntry file) throws IOException {
        if (sheet.state().isFinished()) {
            return;
        }
        if (sheets.beginReading(sheet.id()) > MOST_ATTEMPTS) {
            sheets.fail(sheet.id(), "Reading this sheet stopped the program twice. It was set aside so that the others go on.");
            return;
        }
        boolean ended = false;
        inHand.take(sheet.id());
        try {
            ClassSet classSet = classSets.find(file.classSetId()).orElseThrow();
            ScanPage page = copies.with(
                    file.contentHash(), copy -> ScanPages.page(file.fileName(), copy, sheet.page()));
            keeper.keep(sheet.id(), keeper.assess(page, classSet.task()));
            ended = true;
        } finally {
            if (ended) {
                inHand.done(sheet.id());
            } else {
                inHand.handBack(sheet.id());
            }
        }
    }
}
