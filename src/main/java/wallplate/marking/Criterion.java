package wallplate.marking;

import java.util.List;
import java.util.Optional;

/**
 * One thing that is marked.
 *
 * @param id lower case words joined by hyphens, one of its kind in a guideline
 * @param title as the department words it; empty where the usual words for the subject serve
 * @param marks full marks, in steps of a half
 * @param tolerance for one measured length, angle or count; empty where the usual one for the key applies
 * @param partMarks from the most marks down
 * @param group the group whose maximum holds for it
 * @param precondition what must be drawn before it earns anything
 * @param consistentWorking whether a value that follows rightly from an earlier mistake is credited
 */
public record Criterion(
        String id,
        Optional<String> title,
        double marks,
        Subject subject,
        Optional<Tolerance> tolerance,
        List<Band> partMarks,
        Optional<String> group,
        Optional<Precondition> precondition,
        boolean consistentWorking) {

    public Criterion {
        partMarks = List.copyOf(partMarks);
    }

    /**
     * One of several keys on its own: one mark under the usual tolerance, consistent working as the criterion has it.
     */
    Criterion only(String key) {
        return forKey(key).withConsistentWorking(consistentWorking);
    }

    Criterion withConsistentWorking(boolean credited) {
        return new Criterion(id, title, marks, subject, tolerance, partMarks, group, precondition, credited);
    }

    /** One mark for one key under the usual tolerance; the id is the key with hyphens. */
    public static Criterion forKey(String key) {
        return new Criterion(
                key.replace('.', '-'),
                Optional.empty(),
                1,
                new Subject.OneKey(key),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                true);
    }
}
