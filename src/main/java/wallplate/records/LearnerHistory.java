package wallplate.records;

import java.util.List;

/**
 * The sheets of one learner over all class sets.
 *
 * @param matchedBy how the sheets of one learner were told from others
 * @param entries the oldest set first
 */
public record LearnerHistory(Learner learner, String className, MatchedBy matchedBy, List<Entry> entries) {

    public LearnerHistory {
        entries = List.copyOf(entries);
    }

    /** How sheets of different classes are known to be one learner's. */
    public enum MatchedBy {
        /** By who was moved from class to class. */
        CLASSES,
        /** By the candidate number, in lists of single sets. */
        NUMBER,
        /** By the name within classes of the same name, in lists of single sets. */
        NAME
    }

    /** One sheet and the set that it belongs to. */
    public record Entry(ClassSet classSet, SheetEntry sheet) {}
}
