package wallplate.records;

import java.util.List;

/**
 * The sheets of one learner over all class sets.
 *
 * @param matchedByNumber whether the sheets were gathered by the candidate number; else by the name within classes of
 *     the same name
 * @param entries the oldest set first
 */
public record LearnerHistory(Learner learner, String className, boolean matchedByNumber, List<Entry> entries) {

    public LearnerHistory {
        entries = List.copyOf(entries);
    }

    /** One sheet and the set that it belongs to. */
    public record Entry(ClassSet classSet, SheetEntry sheet) {}
}
