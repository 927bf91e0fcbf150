package wallplate.task;

import java.util.List;

/** What came of reading a task file: the task, or every fault in it. */
public sealed interface TaskReading {

    record Accepted(DrawingTask task) implements TaskReading {}

    record Refused(List<Fault> faults) implements TaskReading {
        public Refused {
            faults = List.copyOf(faults);
        }
    }
}
