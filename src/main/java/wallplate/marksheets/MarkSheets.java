package wallplate.marksheets;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.ownership.Share;

/** Mark sheets as they are kept; what a draft's lines are is put together by {@link MarkSheetBook}. */
public interface MarkSheets {

    /** The newest first. */
    List<Heading> all(Share share);

    Optional<Heading> find(long id);

    long add(NewMarkSheet sheet);

    List<Column> columns(long id);

    /** What was said about learners of a draft. */
    List<Said> said(long id);

    /** Puts what is said in place of all that was said. */
    void say(long id, List<Said> said);

    /** The lines as they were submitted; none for a draft. */
    List<Line> frozenLines(long id);

    /** The first one first. */
    List<Correction> corrections(long id);

    /** The submitted ones of a term of a school year, the newest first. */
    List<Heading> submitted(String schoolYear, String term, Share share);

    /** The columns, frozen lines and corrections of the same mark sheets, by mark sheet; without any of its kind where one has none. */
    Frozen frozen(String schoolYear, String term);

    /** What belongs to many mark sheets, each by the mark sheet's id. */
    record Frozen(
            Map<Long, List<Column>> columns, Map<Long, List<Line>> lines, Map<Long, List<Correction>> corrections) {}

    /** Freezes a draft; false where it was submitted already. */
    boolean submit(long id, List<Line> lines, String submittedBy);

    void correct(long id, Correction correction);

    /** Takes a draft away; false where it was submitted. */
    boolean throwAway(long id);

    /** The submitted mark sheets with a line of a learner, with that line's number; the newest first. */
    List<Place> placesOf(long learnerId, Share share);

    /**
     * A learner's standing in the column of a task of a draft.
     *
     * @param place of the task, from 1
     * @param onPaper the marks of a sheet that was marked on paper; empty where only the standing was said
     */
    record Said(int place, long learnerId, Standing standing, Optional<OnPaper> onPaper) {}

    /** Marks that were given on paper, out of how many. */
    record OnPaper(BigDecimal awarded, BigDecimal available) {}

    /** A line of a submitted mark sheet. */
    record Place(long markSheetId, int line) {}
}
