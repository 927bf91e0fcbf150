package wallplate.jobs;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
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

    private static final Logger LOG = LoggerFactory.getLogger(SheetReading.class);

    /** A sheet that has been begun this often without coming to an end is set aside. */
    private static final int MOST_ATTEMPTS = 2;

    private final Sheets sheets;
    private final Readings readings;
    private final ClassSets classSets;
    private final ScanCopies copies;
    private final SheetKeeper keeper;
    private final InHand inHand;
    private final ReadingMetrics metrics;

    SheetReading(
            Sheets sheets,
            Readings readings,
            ClassSets classSets,
            ScanCopies copies,
            SheetKeeper keeper,
            InHand inHand,
            ReadingMetrics metrics) {
        this.sheets = sheets;
        this.readings = readings;
        this.classSets = classSets;
        this.copies = copies;
        this.keeper = keeper;
        this.inHand = inHand;
        this.metrics = metrics;
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
        boolean ended = false;
        int attempt = inHand.take(sheet.id(), sheets::beginReading);
        try {
            if (attempt > MOST_ATTEMPTS) {
                sheets.fail(
                        sheet.id(), "Reading this sheet stopped the program twice. It was set aside so that the others go on.");
                metrics.setAside();
            } else {
                assessAndKeep(sheet, file);
            }
            ended = true;
        } finally {
            if (ended) {
                inHand.done(sheet.id());
            } else {
                inHand.handBack(sheet.id());
            }
        }
    }

    private void assessAndKeep(SheetEntry sheet, ScanFileEntry file) throws IOException {
        ClassSet classSet = classSets.find(file.classSetId()).orElseThrow();
        long began = System.nanoTime();
        ScanPage page = copies.with(file.contentHash(), copy -> ScanPages.page(file.fileName(), copy, sheet.page()));
        metrics.took("decode", Duration.ofNanos(System.nanoTime() - began));
        AssessedSheet assessed = keeper.assess(page, classSet.task());
        long assessedAt = System.nanoTime();
        keeper.keep(sheet.id(), assessed);
        metrics.took("keep", Duration.ofNanos(System.nanoTime() - assessedAt));
        metrics.finished(assessed);
        LOG.info(
                "page {} was {} in {} ms",
                sheet.page(),
                assessed instanceof AssessedSheet.Read ? "read" : "not readable",
                Duration.ofNanos(System.nanoTime() - began).toMillis());
    }
}
