package wallplate.records;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Corrections;
import wallplate.assessment.Corrections.Ticks;
import wallplate.geometry.Segment;
import wallplate.sheet.LevelPage;

/** Corrections of how sheets were read, who made them, and the readings as they were before. */
public interface SheetCorrections {

    /**
     * A reading as the program gave it, with the names of its pictures in the scan store.
     *
     * @param refused why the sheet could not be read, where nothing is known of it but a level page without a scale
     */
    record AsRead(KeptAssessment assessment, String pagePicture, String screenPicture, Optional<String> refused) {}

    /** Every correction of a sheet, the last first. */
    List<SheetCorrection> of(long sheetId);

    /** The reading before the first correction; the sheet's own where nothing was corrected, empty where it was not read. */
    Optional<AsRead> asRead(long sheetId);

    /** The name of the page picture of that reading, without the reading itself. */
    Optional<String> asReadPicture(long sheetId);

    /** Refuses a sheet for want of a scale and keeps its level page, so that a person can show its bar. */
    void refuseWithoutScale(
            long sheetId,
            String reason,
            String resultJson,
            LevelPage page,
            String pagePicture,
            String screenPicture);

    /** Keeps a correction and what came of the sheet with all that stand. Marks that a person gave stay. */
    void keep(
            long sheetId,
            SheetCorrection correction,
            AssessedSheet.Read sheet,
            String pagePicture,
            String screenPicture,
            String resultJson);

    /**
     * Keeps that the last correction was taken back, and gives the sheet the program's own reading again; one that had
     * been refused is refused again.
     */
    void restore(long sheetId, SheetCorrection takenBack);

    /** Those of these corrections that stand: the last for each key and for the millimetres, unless taken back. */
    static List<SheetCorrection> standing(List<SheetCorrection> lastFirst) {
        Set<Optional<String>> seen = new HashSet<>();
        List<SheetCorrection> standing = new ArrayList<>();
        for (SheetCorrection correction : lastFirst) {
            if (seen.add(correction.key()) && !correction.isTakenBack()) {
                standing.add(correction);
            }
        }
        return standing;
    }

    /** What stands, as the assessment takes it. */
    static Corrections together(List<SheetCorrection> standing) {
        Optional<Ticks> bar = Optional.empty();
        TreeMap<String, List<Segment>> lines = new TreeMap<>();
        for (SheetCorrection correction : standing) {
            if (correction.key().isPresent()) {
                lines.put(correction.key().get(), correction.places());
            } else {
                Segment shown = correction.places().get(0);
                bar = Optional.of(new Ticks(shown.start(), shown.end()));
            }
        }
        return new Corrections(bar, lines);
    }
}
