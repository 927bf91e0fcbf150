package wallplate.records.jdbc;

import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Task files that were checked before they were kept. */
final class KeptYaml {

    private KeptYaml() {}

    static DrawingTask task(String yaml) {
        return switch (TaskFile.read(yaml)) {
            case TaskReading.Accepted accepted -> accepted.task();
            case TaskReading.Refused refused ->
                throw new IllegalStateException("a kept task is no longer accepted: " + refused.faults());
        };
    }
}
