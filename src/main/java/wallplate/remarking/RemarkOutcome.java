package wallplate.remarking;

import java.util.List;
import wallplate.task.Fault;

/** What came of asking for a set to be marked again. */
public sealed interface RemarkOutcome {

    /** What would change, or what did. */
    record Marked(SetPreview preview) implements RemarkOutcome {}

    /** The guideline does not fit the task as the set was given it. */
    record Refused(List<Fault> faults) implements RemarkOutcome {
        public Refused {
            faults = List.copyOf(faults);
        }
    }
}
