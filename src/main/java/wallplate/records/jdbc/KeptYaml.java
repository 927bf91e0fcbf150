package wallplate.records.jdbc;

import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Task files that were checked before they were kept. */
final class KeptYaml {

    private KeptYaml() {}

    static DrawingTask task(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return accepted.task();
        }
        throw new IllegalStateException("a kept task is no longer accepted: " + reading);
    }
}
