package wallplate.records.jdbc;

import java.util.LinkedHashMap;
import java.util.Map;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Task files that were checked before they were kept. */
final class KeptYaml {

    /** Tasks are asked for with every sheet and every row of a list, and a text always means the same task. */
    private static final int MOST_REMEMBERED = 200;

    private static final Map<String, DrawingTask> REMEMBERED = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, DrawingTask> eldest) {
            return size() > MOST_REMEMBERED;
        }
    };

    private KeptYaml() {}

    static DrawingTask task(String yaml) {
        synchronized (REMEMBERED) {
            return REMEMBERED.computeIfAbsent(yaml, KeptYaml::read);
        }
    }

    private static DrawingTask read(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return accepted.task();
        }
        throw new IllegalStateException("a kept task is no longer accepted: " + reading);
    }
}
