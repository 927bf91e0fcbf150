package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.ownership.Share;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;

@Repository
class JdbcTasks implements Tasks {

    private static final int CODE_LENGTH = 6;
    private static final String SELECT = "select id, yaml, learner_code, marks_shown, changed_at from drawing_tasks ";
    private static final String OF_THE_DEMONSTRATION =
            "exists (select 1 from class_sets d where d.task_id = drawing_tasks.id and d.demonstration)";

    private final JdbcClient database;
    private final Clock clock;

    JdbcTasks(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public List<KeptTask> all() {
        return all(Share.everything());
    }

    @Override
    public List<KeptTask> all(Share share) {
        return database.sql(SELECT + "where " + condition(share) + " order by changed_at desc, id desc")
                .query((row, number) -> task(row))
                .list();
    }

    @Override
    public int count(Share share) {
        return database.sql("select count(*) from drawing_tasks where " + condition(share))
                .query(Integer.class)
                .single();
    }

    private static String condition(Share share) {
        return share.condition("owner_id", OF_THE_DEMONSTRATION);
    }

    @Override
    public Optional<KeptTask> find(long id) {
        return database.sql(SELECT + "where id = ?")
                .param(id)
                .query((row, number) -> task(row))
                .optional();
    }

    @Override
    public Optional<KeptTask> named(String taskId) {
        return database.sql(SELECT + "where slug = ? order by changed_at desc, id desc limit 1")
                .param(taskId)
                .query((row, number) -> task(row))
                .optional();
    }

    @Override
    public Optional<KeptTask> byLearnerCode(String code) {
        return database.sql(SELECT + "where learner_code = ?")
                .param(code.strip().toUpperCase(Locale.ROOT))
                .query((row, number) -> task(row))
                .optional();
    }

    @Override
    @Transactional
    public KeptTask add(DrawingTask task) {
        var now = Rows.timestamp(clock.instant());
        long id = Rows.insert(
                database.sql(
                                """
                                insert into drawing_tasks (slug, title, detail, yaml, learner_code, created_at, changed_at)
                                values (?, ?, ?, ?, ?, ?, ?)""")
                        .params(task.id(), task.title(), task.detail(), TaskFile.write(task), freeCode(), now, now));
        return find(id).orElseThrow();
    }

    @Override
    @Transactional
    public KeptTask change(long id, DrawingTask task) {
        database.sql("update drawing_tasks set slug = ?, title = ?, detail = ?, yaml = ?, changed_at = ? where id = ?")
                .params(
                        task.id(),
                        task.title(),
                        task.detail(),
                        TaskFile.write(task),
                        Rows.timestamp(clock.instant()),
                        id)
                .update();
        return find(id).orElseThrow();
    }

    @Override
    public void showMarks(long id, boolean shown) {
        database.sql("update drawing_tasks set marks_shown = ? where id = ?")
                .params(shown, id)
                .update();
    }

    private String freeCode() {
        String code;
        do {
            code = RandomCode.ofLength(CODE_LENGTH);
        } while (byLearnerCode(code).isPresent());
        return code;
    }

    private static KeptTask task(ResultSet row) throws SQLException {
        String yaml = row.getString("yaml");
        return new KeptTask(
                row.getLong("id"),
                KeptYaml.task(yaml),
                yaml,
                row.getString("learner_code"),
                row.getBoolean("marks_shown"),
                Rows.instant(row, "changed_at"));
    }
}
