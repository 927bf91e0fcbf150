package wallplate.records;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.MarkedSheet;
import wallplate.sheet.SheetCode;

/** The sheets of the class sets, what was found on them and the marks they got. */
public interface Sheets {

    /** The sheets of a set in the order in which they came. */
    List<SheetEntry> of(long classSetId);

    Optional<SheetEntry> find(long id);

    /** How far the reading of a set has come. */
    Progress progress(long classSetId);

    /** The same for several sets by one question, by the set's id; a set without sheets is in it. */
    Map<Long, Progress> progress(Collection<Long> classSetIds);

    /** The same for every set that has sheets, by the set's id. */
    Map<Long, Progress> progressOfAll();

    /** When the sheets of a set that were finished last were, the earliest of them first. */
    List<Instant> lastFinished(long classSetId, int most);

    /** The sheet for a page of a file, made where there is none yet. */
    SheetEntry page(long scanFileId, int page);

    /**
     * Says that a sheet is being read now, and how often that has been said before it came to an end.
     *
     * @return the number of this attempt, from 1
     */
    int beginReading(long id);

    /**
     * Keeps what was found on a sheet.
     *
     * @param pagePicture the name of the level page in the scan store
     * @param screenPicture the name of its smaller picture
     * @param resultJson the result file
     */
    void keep(long id, AssessedSheet.Read sheet, String pagePicture, String screenPicture, String resultJson);

    void refuse(long id, String reason, String resultJson);

    /** Keeps what the code printed on a sheet says, also where nothing else of it could be read, and matches by it. */
    void keepCode(long id, SheetCode code);

    void fail(long id, String reason);

    /** Empty where the sheet was not read. */
    Optional<KeptAssessment> assessment(long id);

    /** The result file as it is handed out; empty while the sheet has not been looked at. */
    Optional<String> resultJson(long id);

    /** The marks of a sheet in the guideline's order. */
    List<MarkEntry> marks(long id);

    /** The marks of every sheet of a set, by sheet in the set's order and then in the guideline's. */
    List<MarkEntry> marksOfSet(long classSetId);

    /** Puts other marks in place of those that the guideline gave; what a person decided stays. */
    void markAgain(long id, MarkedSheet marked);

    /** The criteria by which the sheets of a set were marked, in the guideline's order. */
    List<CriterionEntry> criteria(long classSetId);

    /** One criterion's marks on every sheet of a set, in the set's order. */
    List<MarkEntry> marksOfSet(long classSetId, String criterion);

    /** Where one criterion was measured on the sheets of a set; a sheet on which it was not has no place. */
    List<MarkPlace> places(long classSetId, String criterion);

    /** How many sheets of a set were read before places were kept with the marks. */
    int withoutPlaces(long classSetId);

    /** Keeps the places of such sheets, from what was kept of their reading; no scan is read again. */
    void keepPlaces(long classSetId);

    /** Every decision about the marks of a sheet, the last first. */
    List<MarkChange> changes(long id);

    /** Writes down a person's decision; an empty verdict gives the guideline's mark back. */
    void change(long id, MarkChange change);

    /** Whether a blank page stands in the place of the sheet's, because its time was over or its learner was erased. */
    boolean isPictureRemoved(long id);

    void setChecked(long id, boolean checked);

    /**
     * Says whose sheet it is; nobody's where empty. A learner has one sheet of a set: another one gives it up, and the
     * sheets that no person has placed are matched anew.
     */
    void giveTo(long id, Optional<Long> learnerId);

    /** The same for many sheets of one set at once; no learner may stand at two of them. */
    void giveTo(Map<Long, Optional<Long>> learnerBySheet);

    /** Matches the sheets that no person has placed: by their printed code, by their file's name, in order. */
    void match(long classSetId);
}
