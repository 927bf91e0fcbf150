package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.ownership.Share;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.Learner;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;

@Repository
class JdbcClassSets implements ClassSets {

    private static final String SELECT =
            """
            select s.id, s.title, s.class_id, c.name as class_name, s.task_id, s.task_yaml, s.demonstration,
                   s.created_at, s.released_at
            from class_sets s join school_classes c on c.id = s.class_id
            """;

    private static final String NEWEST_FIRST = " order by s.created_at desc, s.id desc";

    private static final String LEARNERS = "select l.id as learner_id, l.position as learner_position, "
            + Rows.SHOWN_NAME + " as learner_name, l.candidate_number from learners l join school_classes c on c.id = l.class_id ";

    private final JdbcClient database;
    private final Clock clock;

    JdbcClassSets(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public List<ClassSet> all() {
        return database.sql(SELECT + NEWEST_FIRST)
                .query((row, number) -> classSet(row))
                .list();
    }

    @Override
    public List<ClassSet> ofClass(long classId, Share share) {
        return database.sql(SELECT + "where s.class_id = ? and " + condition(share) + NEWEST_FIRST)
                .param(classId)
                .query((row, number) -> classSet(row))
                .list();
    }

    @Override
    public List<ClassSet> ofTask(long taskId, Share share) {
        return database.sql(SELECT + "where s.task_id = ? and " + condition(share) + NEWEST_FIRST)
                .param(taskId)
                .query((row, number) -> classSet(row))
                .list();
    }

    /** The newest first. */
    List<ClassSet> of(Collection<Long> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        return database.sql(SELECT + "where s.id in (:sets)" + NEWEST_FIRST)
                .param("sets", ids)
                .query((row, number) -> classSet(row))
                .list();
    }

    private static String condition(Share share) {
        return share.condition("s.owner_id", "s.demonstration");
    }

    @Override
    public Optional<ClassSet> find(long id) {
        return database.sql(SELECT + "where s.id = ?")
                .param(id)
                .query((row, number) -> classSet(row))
                .optional();
    }

    @Override
    @Transactional
    public ClassSet add(
            String title, String className, List<ClassListEntry> classList, KeptTask task, boolean demonstration) {
        var now = Rows.timestamp(clock.instant());
        long classId = Rows.insert(database.sql("insert into school_classes (name, created_at) values (?, ?)")
                .params(className, now));
        replaceLearners(classId, classList);
        return insert(title, classId, task, demonstration);
    }

    @Override
    @Transactional
    public ClassSet addFor(long classId, String title, KeptTask task) {
        return insert(title, classId, task, false);
    }

    private ClassSet insert(String title, long classId, KeptTask task, boolean demonstration) {
        long id = Rows.insert(
                database.sql(
                                """
                                insert into class_sets (title, class_id, task_id, task_yaml, demonstration, created_at)
                                values (?, ?, ?, ?, ?, ?)""")
                        .params(
                                title,
                                classId,
                                task.id(),
                                task.yaml(),
                                demonstration,
                                Rows.timestamp(clock.instant())));
        return find(id).orElseThrow();
    }

    @Override
    public void replaceTask(long id, DrawingTask task) {
        database.sql("update class_sets set task_yaml = ? where id = ?")
                .params(TaskFile.write(task), id)
                .update();
    }

    @Override
    public List<Learner> learners(long classId) {
        return database.sql(LEARNERS + "where l.class_id = ? and l.left_at is null order by l.position")
                .param(classId)
                .query((row, number) -> Rows.learner(row))
                .list();
    }

    @Override
    public List<Learner> learnersOfSet(long classSetId) {
        return database.sql(LEARNERS
                        + """
                        join class_sets s on s.class_id = l.class_id
                        where s.id = ? and (l.left_at is null or l.left_at > s.created_at) order by l.position""")
                .param(classSetId)
                .query((row, number) -> Rows.learner(row))
                .list();
    }

    @Override
    public boolean hasOwnList(long classSetId) {
        return database.sql(
                                """
                                select count(*) from class_sets s join school_classes c on c.id = s.class_id
                                where s.id = ? and c.school_year is null""")
                        .param(classSetId)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    @Override
    @Transactional
    public void replaceLearners(long classId, List<ClassListEntry> classList) {
        int present = learners(classId).size();
        for (int index = 0; index < classList.size(); index++) {
            ClassListEntry entry = classList.get(index);
            String sql = index < present
                    ? "update learners set name = ?, candidate_number = ? where class_id = ? and position = ?"
                    : "insert into learners (name, candidate_number, class_id, position) values (?, ?, ?, ?)";
            database.sql(sql)
                    .params(entry.name(), entry.candidateNumber(), classId, index + 1)
                    .update();
        }
        database.sql("update learners set person_id = id, joined_at = ? where class_id = ? and person_id is null")
                .params(Rows.timestamp(clock.instant()), classId)
                .update();
        database.sql("delete from learners where class_id = ? and position > ?")
                .params(classId, classList.size())
                .update();
    }

    @Override
    public void release(long id) {
        database.sql("update class_sets set released_at = ? where id = ?")
                .params(Rows.timestamp(clock.instant()), id)
                .update();
    }

    @Override
    public void withdraw(long id) {
        database.sql("update class_sets set released_at = null where id = ?")
                .param(id)
                .update();
    }

    @Override
    public boolean hasDemonstration() {
        return database.sql("select count(*) from class_sets where demonstration")
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private static ClassSet classSet(ResultSet row) throws SQLException {
        return new ClassSet(
                row.getLong("id"),
                row.getString("title"),
                row.getLong("class_id"),
                row.getString("class_name"),
                row.getLong("task_id"),
                KeptYaml.task(row.getString("task_yaml")),
                row.getBoolean("demonstration"),
                Rows.instant(row, "created_at"),
                Rows.optionalInstant(row, "released_at"));
    }
}
