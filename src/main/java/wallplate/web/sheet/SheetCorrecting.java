package wallplate.web.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.assessment.CorrectedPage;
import wallplate.assessment.CorrectedSheet;
import wallplate.assessment.Corrections.Ticks;
import wallplate.assessment.Corrections;
import wallplate.geometry.Segment;
import wallplate.handouts.SheetDocuments;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.records.ClassSet;
import wallplate.records.ScanStore;
import wallplate.records.SheetCorrection;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;

/** Measures a kept sheet again from its own level picture, with what a person corrected, and keeps what came of it. */
@Component
class SheetCorrecting {

    private final Sheets sheets;
    private final SheetCorrections corrections;
    private final SheetDocuments documents;
    private final ScanStore store;
    private final Assessor assessor;
    private final Clock clock;

    SheetCorrecting(
            Sheets sheets,
            SheetCorrections corrections,
            SheetDocuments documents,
            ScanStore store,
            Assessor assessor,
            Clock clock) {
        this.sheets = sheets;
        this.corrections = corrections;
        this.documents = documents;
        this.store = store;
        this.assessor = assessor;
        this.clock = clock;
    }

    /** The sheet as the program read it, with its picture. */
    AssessedSheet.Read asRead(ClassSet classSet, SheetEntry sheet) throws IOException {
        SheetCorrections.AsRead kept = corrections.asRead(sheet.id()).orElseThrow();
        try (InputStream png = store.open(kept.pagePicture())) {
            double pixelsPerMm = kept.assessment().page().pixelsPerMm();
            return documents.asRead(classSet, sheet, kept.assessment(), PagePicture.read(png.readAllBytes(), pixelsPerMm));
        }
    }

    /** The level page that is measured on, with the millimetres as they stand. */
    CorrectedPage page(AssessedSheet.Read asRead, SheetEntry sheet) {
        List<SheetCorrection> standing = SheetCorrections.standing(corrections.of(sheet.id()));
        Optional<Ticks> ticks = SheetCorrections.together(standing).bar();
        // Ticks that stand were not refused when they were shown, and the picture is the same.
        return ((CorrectedPage.Laid) CorrectedPage.of(asRead, ticks)).page();
    }

    /**
     * Measures the sheet again with one correction more and keeps it.
     *
     * @param places on the page as it was read
     * @return why it was refused; empty where it was kept
     */
    Optional<String> correct(
            ClassSet classSet, SheetEntry sheet, Optional<String> key, List<Segment> places, String person)
            throws IOException {
        SheetCorrection correction = new SheetCorrection(key, places, person, clock.instant());
        List<SheetCorrection> all = new ArrayList<>(List.of(correction));
        all.addAll(corrections.of(sheet.id()));
        return keep(asRead(classSet, sheet), sheet, correction, SheetCorrections.standing(all));
    }

    /** Takes a correction back: the sheet is as read, or as what else was corrected makes it. */
    Optional<String> takeBack(ClassSet classSet, SheetEntry sheet, Optional<String> key, String person)
            throws IOException {
        List<SheetCorrection> before = corrections.of(sheet.id());
        List<SheetCorrection> standing = SheetCorrections.standing(before);
        List<SheetCorrection> left =
                standing.stream().filter(one -> !one.key().equals(key)).toList();
        if (left.size() == standing.size()) {
            return Optional.empty();
        }
        SheetCorrection takenBack = new SheetCorrection(key, List.of(), person, clock.instant());
        AssessedSheet.Read asRead = asRead(classSet, sheet);
        if (isWithoutScale(sheet, left)) {
            corrections.restore(sheet.id(), takenBack);
            return Optional.empty();
        }
        if (!left.isEmpty()) {
            return keep(asRead, sheet, takenBack, left);
        }
        corrections.restore(sheet.id(), takenBack);
        // The guideline may be another one than when the sheet was read.
        if (assessor.correct(asRead, Corrections.none()) instanceof CorrectedSheet.Corrected again) {
            sheets.markAgain(sheet.id(), again.sheet().marked());
        }
        return Optional.empty();
    }

    /** Whether the sheet's millimetres were only those of the ticks that are no longer shown. */
    private boolean isWithoutScale(SheetEntry sheet, List<SheetCorrection> left) {
        boolean refused = corrections.asRead(sheet.id())
                .flatMap(SheetCorrections.AsRead::refused)
                .isPresent();
        return refused && left.stream().allMatch(one -> one.key().isPresent());
    }

    private Optional<String> keep(
            AssessedSheet.Read asRead, SheetEntry sheet, SheetCorrection correction, List<SheetCorrection> standing)
            throws IOException {
        CorrectedSheet corrected = assessor.correct(asRead, SheetCorrections.together(standing));
        if (corrected instanceof CorrectedSheet.Refused refused) {
            return Optional.of(refused.reason());
        }
        AssessedSheet.Read read = ((CorrectedSheet.Corrected) corrected).sheet();
        String full = put(PagePicture.full(read.levelPage().ink()));
        String screen = put(PagePicture.forScreen(read.levelPage().ink()));
        corrections.keep(sheet.id(), correction, read, full, screen, ResultFile.write(withoutEvidence(read)));
        return Optional.empty();
    }

    /** The result file tells evidence in pixels of the scan, to which the kept picture does not lead back. */
    private static AssessedSheet.Read withoutEvidence(AssessedSheet.Read read) {
        MeasuredSheet measured = read.measured();
        List<Measurement> plain = measured.measurements().stream()
                .map(one -> Measurement.of(one.key(), one.finding()))
                .toList();
        return new AssessedSheet.Read(
                read.scan(),
                read.page(),
                read.expected(),
                read.levelPage(),
                new MeasuredSheet(plain, measured.parts(), measured.heel()),
                read.marked());
    }

    private String put(byte[] picture) throws IOException {
        return store.put(new ByteArrayInputStream(picture)).name();
    }
}
