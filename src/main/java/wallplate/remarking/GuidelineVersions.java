package wallplate.remarking;

import java.util.List;
import java.util.Optional;
import wallplate.marking.Guideline;

/** The versions of tasks' marking guidelines, and the runs of them over class sets. */
public interface GuidelineVersions {

    /** All versions of a task's guideline, the last kept first. */
    List<KeptGuideline> of(long taskId);

    Optional<KeptGuideline> find(long taskId, String version);

    /** Keeps a version; one that is kept already stays as it is, with who kept it first. */
    void keep(long taskId, Guideline guideline, String keptBy);

    /** The runs over a set, the last first. */
    List<GuidelineRun> runs(long classSetId);

    void add(long classSetId, GuidelineRun run);
}
