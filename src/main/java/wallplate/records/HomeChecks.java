package wallplate.records;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Checks at home that learners had kept for their class: criteria and verdicts without the picture. */
public interface HomeChecks {

    /** With which learners of a class have a check kept; empty until one was made. */
    Optional<String> codeOf(long classId);

    /** Makes a code for a class in place of an earlier one. */
    String makeCode(long classId);

    /**
     * Who says to belong to a class.
     *
     * @param classCode however it was typed
     * @param who the name or the candidate number as the class list has it, whatever the case of the letters
     * @return the learner's row in the list of the class; empty unless there is one and no other
     */
    Optional<Long> learner(String classCode, String who);

    /** Keeps what a check found; false where it is gone, was not read or was kept already. */
    boolean keep(SelfCheckEntry check, long learnerId);

    /** What was kept for learners, by their rows in class lists, the latest first. */
    List<HomeCheck> of(Collection<Long> learnerIds);
}
