package wallplate.records;

import java.util.List;
import java.util.Optional;
import wallplate.ownership.Share;
import wallplate.task.DrawingTask;

/** The drawing tasks of this installation. */
public interface Tasks {

    /** All of them, the one changed last first. */
    List<KeptTask> all();

    /** Those of a share of the records, the one changed last first. */
    List<KeptTask> all(Share share);

    int count(Share share);

    Optional<KeptTask> find(long id);

    /** The task with an id of its own, as its file has it; of several the one changed last. */
    Optional<KeptTask> named(String taskId);

    /** The task whose code a learner typed, whatever the case of the letters. */
    Optional<KeptTask> byLearnerCode(String code);

    KeptTask add(DrawingTask task);

    KeptTask change(long id, DrawingTask task);

    void showMarks(long id, boolean shown);
}
