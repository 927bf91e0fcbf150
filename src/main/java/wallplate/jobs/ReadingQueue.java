package wallplate.jobs;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;
import wallplate.records.Readings;
import wallplate.records.ScanFileEntry;

/** Hands files to the background work that reads them. */
@Component
public class ReadingQueue {

    static final TaskDescriptor<Long> READ_FILE = TaskDescriptor.of("read-file", Long.class);
    static final TaskDescriptor<Long> READ_SHEET = TaskDescriptor.of("read-sheet", Long.class);

    private final SchedulerClient scheduler;
    private final QueueTable table;
    private final Readings readings;
    private final Clock clock;

    ReadingQueue(@Lazy SchedulerClient scheduler, QueueTable table, Readings readings, Clock clock) {
        this.scheduler = scheduler;
        this.table = table;
        this.readings = readings;
        this.clock = clock;
    }

    /** Has a file read as soon as there is room; a file that is already in the queue stays where it is. */
    public void add(ScanFileEntry file) {
        scheduler.scheduleIfNotExists(READ_FILE
                .instance(Long.toString(file.id()))
                .data(file.id())
                .priority(Turns.OPEN_FILE)
                .scheduledTo(clock.instant()));
    }

    /** Has a sheet read once more that was set aside; false where it was not. */
    public boolean tryAgain(long sheetId) {
        Optional<ScanFileEntry> file = readings.tryAgain(sheetId);
        file.ifPresent(this::add);
        return file.isPresent();
    }

    /** Has every sheet of a set read once more that was set aside, and says how many they are. */
    public int tryAllAgain(long classSetId) {
        return (int) readings.setAside(classSetId).stream().filter(this::tryAgain).count();
    }

    /** Puts sheets into the queue, each at its class's next turn. */
    void addSheets(long classId, List<Long> sheetIds) {
        if (sheetIds.isEmpty()) {
            return;
        }
        String prefix = "class-" + classId + "/";
        int turn = table.nextTurn(prefix);
        for (long sheetId : sheetIds) {
            boolean added = scheduler.scheduleIfNotExists(READ_SHEET
                    .instance(prefix + "sheet-" + sheetId)
                    .data(sheetId)
                    .priority(turn)
                    .scheduledTo(clock.instant()));
            if (added) {
                turn = Turns.after(turn, Optional.of(turn));
            }
        }
    }
}
