package wallplate.records;

import java.util.Map;
import java.util.Optional;

/**
 * Codes with which learners open the feedback on their own sheets.
 *
 * <p>A code is told once, when it is made; only its hash is kept. It opens a sheet as long as the sheet is whose it was
 * when the code was made.
 */
public interface FeedbackCodes {

    /** New codes for the sheets of a set that were looked at, by sheet; earlier codes of the set open nothing then. */
    Map<Long, String> make(long classSetId);

    /** The sheet that a code opens, however the code was typed. */
    Optional<Long> sheetOf(String typed);

    /** How many sheets of a set have a code that opens them. */
    int count(long classSetId);
}
