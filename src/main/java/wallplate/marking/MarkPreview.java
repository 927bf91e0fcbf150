package wallplate.marking;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What would change on one sheet if it were marked again under another guideline.
 *
 * @param changes in the order of the new guideline; criteria that are no longer there come last
 */
public record MarkPreview(double awardedBefore, double awardedAfter, List<Change> changes) {

    /**
     * One criterion that would be marked otherwise.
     *
     * @param before empty where the criterion is new
     * @param after empty where the criterion is no longer there
     */
    public record Change(String criterion, Optional<Mark> before, Optional<Mark> after) {}

    public MarkPreview {
        changes = List.copyOf(changes);
    }

    /** Compares the marks given with those that a new run would give. */
    public static MarkPreview between(MarkedSheet before, MarkedSheet after) {
        Set<String> criteria = new LinkedHashSet<>();
        after.marks().forEach(mark -> criteria.add(mark.criterion()));
        before.marks().forEach(mark -> criteria.add(mark.criterion()));
        List<Change> changes = criteria.stream()
                .map(criterion -> new Change(criterion, before.mark(criterion), after.mark(criterion)))
                .filter(change -> !isSame(change))
                .toList();
        return new MarkPreview(before.awarded(), after.awarded(), changes);
    }

    private static boolean isSame(Change change) {
        if (change.before().isEmpty() || change.after().isEmpty()) {
            return false;
        }
        Mark before = change.before().get();
        Mark after = change.after().get();
        return before.verdict() == after.verdict()
                && before.awarded() == after.awarded()
                && before.available() == after.available();
    }

    /** Whether the sheet's marks would differ at all. */
    public boolean changesAnything() {
        return !changes.isEmpty() || awardedBefore != awardedAfter;
    }
}
