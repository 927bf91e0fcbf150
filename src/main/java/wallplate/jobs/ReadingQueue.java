package wallplate.jobs;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.time.Clock;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;
import wallplate.records.ScanFileEntry;

/** Hands files to the background work that reads them. */
@Component
public class ReadingQueue {

    static final TaskDescriptor<Long> READ_FILE = TaskDescriptor.of("read-file", Long.class);

    private final SchedulerClient scheduler;
    private final Clock clock;

    ReadingQueue(@Lazy SchedulerClient scheduler, Clock clock) {
        this.scheduler = scheduler;
        this.clock = clock;
    }

    /** Has a file read as soon as there is room; a file that is already in the queue stays where it is. */
    public void add(ScanFileEntry file) {
        scheduler.scheduleIfNotExists(
                READ_FILE.instance(Long.toString(file.id())).data(file.id()).scheduledTo(clock.instant()));
    }
}
