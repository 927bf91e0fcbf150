package wallplate.records;

import java.util.List;
import java.util.Optional;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.MarkedSheet;

/** The sheets of the class sets, what was found on them and the marks they got. */
public interface Sheets {

    /** The sheets of a set in the order in which they came. */
    List<SheetEntry> of(long classSetId);

    Optional<SheetEntry> find(long id);

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

    /** Every decision about the marks of a sheet, the last first. */
    List<MarkChange> changes(long id);

    /** Writes down a person's decision; an empty verdict gives the guideline's mark back. */
    void change(long id, MarkChange change);

    void setChecked(long id, boolean checked);

    /** Says whose sheet it is; nobody's where empty. A learner has one sheet of a set: another one gives it up. */
    void giveTo(long id, Optional<Long> learnerId);

    /** Gives the sheets that nobody has placed by hand to the learners in the order of the class list. */
    void matchInOrder(long classSetId);
}
