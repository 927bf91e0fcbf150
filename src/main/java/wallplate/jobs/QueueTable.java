package wallplate.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What is asked of the queue's table and db-scheduler has no method for. */
@Component
class QueueTable {

    private final JdbcClient database;
    private final Clock clock;

    QueueTable(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /**
     * How many jobs of a kind are due and not taken, and since when the oldest of them is due.
     *
     * @param oldest empty where none is due
     */
    record Waiting(long jobs, Optional<Instant> oldest) {

        Duration age(Instant now) {
            return oldest.map(since -> Duration.between(since, now)).orElse(Duration.ZERO);
        }
    }

    /**
     * The turn of the next sheet of a class, as a priority: the higher, the sooner.
     *
     * <p>Turns go from class to class (start-time fair queueing; Goyal, Vin and Cheng, 1996, with every sheet alike): a sheet
     * comes one turn after the class's own last waiting sheet, and a class that has none waiting begins with the turn that
     * is now being served. So five sheets are read among the first ten however long another class's set is, and no class
     * waits for ever.
     */
    int nextTurn(String classPrefix) {
        int now = database.sql("select coalesce(max(priority), ?) from scheduled_tasks where task_name = ?")
                .params(Turns.FIRST, ReadingQueue.READ_SHEET.getTaskName())
                .query(Integer.class)
                .single();
        Optional<Integer> last = database.sql(
                        "select min(priority) from scheduled_tasks where task_name = ? and task_instance like ?")
                .params(ReadingQueue.READ_SHEET.getTaskName(), classPrefix + "%")
                .query(Integer.class)
                .optional();
        return Turns.after(now, last);
    }

    /** Files that are to be read although no job would do it, after a crash between two steps. */
    List<Long> lostFiles() {
        return database.sql(
                        """
                        select distinct f.id, f.class_set_id, f.position from scan_files f
                        join class_sets c on c.id = f.class_set_id
                        left join sheets s on s.scan_file_id = f.id and s.state in ('waiting', 'reading')
                        where f.state in ('waiting', 'reading')
                          and not exists (
                            select 1 from scheduled_tasks t
                            where t.task_name = ? and t.task_instance = cast(f.id as varchar))
                          and not exists (
                            select 1 from scheduled_tasks t
                            where t.task_name = ?
                              and t.task_instance = 'class-' || cast(c.class_id as varchar) || '/sheet-' || cast(s.id as varchar))
                        order by f.class_set_id, f.position""")
                .params(ReadingQueue.READ_FILE.getTaskName(), ReadingQueue.READ_SHEET.getTaskName())
                .query((row, number) -> row.getLong("id"))
                .list();
    }

    Waiting waiting(String taskName) {
        return database.sql(
                        """
                        select count(*) as jobs, min(execution_time) as oldest from scheduled_tasks
                        where task_name = ? and not picked and execution_time <= ?""")
                .params(taskName, clock.instant().atOffset(ZoneOffset.UTC))
                .query((row, number) -> new Waiting(
                        row.getLong("jobs"),
                        Optional.ofNullable(row.getObject("oldest", OffsetDateTime.class))
                                .map(OffsetDateTime::toInstant)))
                .single();
    }

    /** Gives back the jobs that a process has taken and will not finish. */
    int giveBack(String takenBy) {
        return database.sql(FREE + " and picked_by = ?").param(takenBy).update();
    }

    /** Gives back every job that is taken; only for a database that no other process uses. */
    int giveBackAll() {
        return database.sql(FREE).update();
    }

    private static final String FREE =
            """
            update scheduled_tasks set picked = false, picked_by = null, last_heartbeat = null, version = version + 1
            where picked""";
}
