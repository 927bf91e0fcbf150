package wallplate.privacy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What is kept about one learner, found from any of the learner's rows in class lists. */
public interface PersonalRecords {

    /**
     * A time in a class, under the learner's own name and number.
     *
     * @param schoolYear empty where it was the list of one class set
     */
    record Stay(
            long learnerId,
            String className,
            String schoolYear,
            int position,
            String name,
            String candidateNumber,
            Instant joinedAt,
            Optional<Instant> leftAt) {}

    /**
     * A sheet and the file that it came in.
     *
     * @param otherSheets sheets of the same file that are not this learner's
     */
    record PersonalSheet(
            long sheetId,
            long classSetId,
            long fileId,
            int page,
            String fileName,
            String contentHash,
            boolean hasScan,
            Optional<String> printedCode,
            int otherSheets) {}

    /** A learner's line of a submitted mark sheet. */
    record PersonalLine(long markSheetId, int line) {}

    /** Every time in a class, the first one first; none where there is no such learner. */
    List<Stay> stays(long learnerId);

    /** Every sheet of theirs. */
    List<PersonalSheet> sheets(List<Stay> stays);

    /** Their lines of submitted mark sheets. */
    List<PersonalLine> lines(List<Stay> stays);

    /**
     * Takes everything away that leads to the person, within a transaction; marks, measurements and totals stay.
     *
     * @return the names of contents in the scan store that may be left over
     */
    List<String> erase(List<Stay> stays, List<PersonalSheet> sheets, BlankPages blank);
}
