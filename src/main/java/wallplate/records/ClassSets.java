package wallplate.records;

import java.util.List;
import java.util.Optional;
import wallplate.task.DrawingTask;

/** Class sets and the class lists they belong to. */
public interface ClassSets {

    /** All of them, the newest first. */
    List<ClassSet> all();

    Optional<ClassSet> find(long id);

    ClassSet add(String title, String className, List<ClassListEntry> classList, KeptTask task, boolean demonstration);

    /** Puts another task in place of the one that the set was given, such as the same under another guideline. */
    void replaceTask(long id, DrawingTask task);

    List<Learner> learners(long classId);

    /** Puts another class list in place of the present one; sheets keep their learners by position. */
    void replaceLearners(long classId, List<ClassListEntry> classList);

    void release(long id);

    void withdraw(long id);

    boolean hasDemonstration();
}
