package wallplate.records;

import java.util.Optional;
import wallplate.ownership.Share;

/** What became of learners over time. */
public interface Histories {

    /**
     * The history of a learner of a class list, empty where there is no such learner.
     *
     * @param share whose class sets are looked at
     */
    Optional<LearnerHistory> of(long learnerId, Share share);
}
