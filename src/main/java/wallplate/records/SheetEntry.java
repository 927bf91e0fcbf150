package wallplate.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import wallplate.sheet.SheetCode;

/**
 * One sheet of a class set and where it stands.
 *
 * @param number its place in the set, from 1, in the order in which the sheets came
 * @param page the page of the file, from 1
 * @param awarded marks as they stand, changes by hand included
 * @param undecided criteria that still wait for a person
 * @param pagePicture the level page at full resolution in the scan store
 * @param screenPicture the level page at the size of a screen
 * @param code what the code printed on the sheet says; empty where there is none or it cannot be read
 * @param matchedBy how it came to its learner, or to nobody
 */
public record SheetEntry(
        long id,
        long classSetId,
        int number,
        String fileName,
        int page,
        Optional<Learner> learner,
        SheetState state,
        Optional<String> reason,
        double awarded,
        double available,
        int undecided,
        List<String> warnings,
        Optional<Instant> assessedAt,
        Optional<Instant> checkedAt,
        Optional<String> pagePicture,
        Optional<String> screenPicture,
        Optional<SheetCode> code,
        MatchedBy matchedBy) {

    public SheetEntry {
        warnings = List.copyOf(warnings);
    }

    /** Whether a person has to look at it before its marks can stand. */
    public boolean needsPerson() {
        return checkedAt.isEmpty()
                && (state == SheetState.UNREADABLE || state == SheetState.FAILED || undecided > 0 || !warnings.isEmpty());
    }

    /** The learner's name, or the file and page where nobody is matched. */
    public String label() {
        return learner.map(Learner::name).orElse(page > 1 ? fileName + ", page " + page : fileName);
    }
}
