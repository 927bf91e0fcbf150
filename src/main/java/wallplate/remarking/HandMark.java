package wallplate.remarking;

import java.util.Optional;
import wallplate.marking.Mark;
import wallplate.records.MarkEntry;

/**
 * A mark that a person set, beside what the guideline gave and what it would give now.
 *
 * @param standing as it stands before the run
 * @param after what the new run gives; empty where the new guideline has no such criterion
 */
public record HandMark(MarkEntry standing, Optional<Mark> after) {

    /** Whether the new run says otherwise than the person did. */
    public boolean differs() {
        return after.filter(mark -> mark.verdict() == standing.verdict() && mark.awarded() == standing.awarded())
                .isEmpty();
    }

    /** Whether more marks were given by hand than the new guideline has for the criterion. */
    public boolean isTooHigh() {
        return after.filter(mark -> standing.awarded() > mark.available()).isPresent();
    }
}
