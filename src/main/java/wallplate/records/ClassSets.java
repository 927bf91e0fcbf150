package wallplate.records;

import java.util.List;
import java.util.Optional;
import wallplate.ownership.Share;
import wallplate.task.DrawingTask;

/** Class sets and the class lists they belong to. */
public interface ClassSets {

    /** All of them, the newest first. */
    List<ClassSet> all();

    Optional<ClassSet> find(long id);

    /** The sets of one class, the newest first. */
    List<ClassSet> ofClass(long classId, Share share);

    /** The sets that were made with one task, the newest first. */
    List<ClassSet> ofTask(long taskId, Share share);

    ClassSet add(String title, String className, List<ClassListEntry> classList, KeptTask task, boolean demonstration);

    /** Puts another task in place of the one that the set was given, such as the same under another guideline. */
    void replaceTask(long id, DrawingTask task);

    /** A set of a class that is kept with its learners; the set has no list of its own. */
    ClassSet addFor(long classId, String title, KeptTask task);

    /** Who is in a class now. */
    List<Learner> learners(long classId);

    /** Who was in the class of a set when it was made, or came later: everybody who may have drawn one of its sheets. */
    List<Learner> learnersOfSet(long classSetId);

    /** Whether the class list belongs to this set alone, so that it can be replaced from the set. */
    boolean hasOwnList(long classSetId);

    /** Puts another class list in place of the present one; sheets keep their learners by position. */
    void replaceLearners(long classId, List<ClassListEntry> classList);

    void release(long id);

    void withdraw(long id);

    boolean hasDemonstration();
}
