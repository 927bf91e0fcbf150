package wallplate.records;

import java.util.Optional;

/** What became of learners over time. */
public interface Histories {

    /** The history of a learner of a class list, empty where there is no such learner. */
    Optional<LearnerHistory> of(long learnerId);
}
