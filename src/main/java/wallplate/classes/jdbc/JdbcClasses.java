package wallplate.classes.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.classes.Classes;
import wallplate.classes.Enrolment;
import wallplate.classes.ListedLearner;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.ownership.Share;

@Repository
class JdbcClasses implements Classes {

    private static final String CLASSES =
            """
            select c.id, c.name, c.school_year, c.numbers_shown, c.created_at,
                   (select count(*) from learners l where l.class_id = c.id and l.left_at is null) as learner_count,
                   (select count(*) from class_sets s where s.class_id = c.id) as set_count
            from school_classes c where c.school_year is not null
            """;
    private static final String OF_THE_DEMONSTRATION =
            "exists (select 1 from class_sets d where d.class_id = c.id and d.demonstration)";
    private static final String ENROLMENTS =
            """
            select l.id, l.person_id, l.class_id, l.position, l.name, l.candidate_number,
                   coalesce(l.joined_at, c.created_at) as joined_at, l.left_at
            from learners l join school_classes c on c.id = l.class_id
            """;

    private final JdbcClient database;
    private final Clock clock;

    JdbcClasses(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public List<SchoolClass> all(Share share) {
        return database.sql(CLASSES + "and " + share.condition("c.owner_id", OF_THE_DEMONSTRATION) + " order by c.school_year desc, c.name, c.id")
                .query((row, number) -> schoolClass(row))
                .list();
    }

    @Override
    public Optional<SchoolClass> find(long id) {
        return database.sql(CLASSES + "and c.id = ?")
                .param(id)
                .query((row, number) -> schoolClass(row))
                .optional();
    }

    @Override
    @Transactional
    public Optional<SchoolClass> add(String name, SchoolYear year) {
        boolean taken = database.sql("select count(*) from school_classes where school_year = ? and name = ?")
                        .params(year.label(), name)
                        .query(Integer.class)
                        .single()
                > 0;
        return taken
                ? Optional.empty()
                : find(insert(database.sql("insert into school_classes (name, school_year, created_at) values (?, ?, ?)")
                        .params(name, year.label(), now())));
    }

    @Override
    public List<Enrolment> enrolments(long classId) {
        return database.sql(ENROLMENTS + "where l.class_id = ? order by l.position")
                .param(classId)
                .query((row, number) -> enrolment(row))
                .list();
    }

    @Override
    public Optional<Enrolment> enrolment(long id) {
        return database.sql(ENROLMENTS + "where l.id = ?")
                .param(id)
                .query((row, number) -> enrolment(row))
                .optional();
    }

    @Override
    public List<Enrolment> history(long enrolmentId) {
        return database.sql(ENROLMENTS
                        + "where l.person_id = (select person_id from learners where id = ?) order by joined_at, l.id")
                .param(enrolmentId)
                .query((row, number) -> enrolment(row))
                .list();
    }

    @Override
    @Transactional
    public void enrol(long classId, List<ListedLearner> learners) {
        lock(classId);
        int position = lastPosition(classId);
        for (ListedLearner learner : learners) {
            position++;
            long id = insert(database.sql(
                            """
                            insert into learners (class_id, position, name, candidate_number, joined_at)
                            values (?, ?, ?, ?, ?)""")
                    .params(classId, position, learner.name(), learner.candidateNumber(), now()));
            database.sql("update learners set person_id = id where id = ?").param(id).update();
        }
    }

    @Override
    @Transactional
    public void rename(long enrolmentId, String name, String candidateNumber) {
        database.sql("update learners set name = ? where person_id = (select person_id from learners where id = ?)")
                .params(name, enrolmentId)
                .update();
        database.sql("update learners set candidate_number = ? where id = ?")
                .params(candidateNumber, enrolmentId)
                .update();
    }

    @Override
    @Transactional
    public void move(List<Enrolment> enrolments, long toClassId) {
        lock(toClassId);
        int position = lastPosition(toClassId);
        leave(enrolments);
        for (Enrolment enrolment : enrolments) {
            position++;
            database.sql(
                            """
                            insert into learners (class_id, position, name, candidate_number, person_id, joined_at)
                            values (?, ?, ?, ?, ?, ?)""")
                    .params(
                            toClassId,
                            position,
                            enrolment.name(),
                            enrolment.candidateNumber(),
                            enrolment.person(),
                            now())
                    .update();
        }
    }

    @Override
    @Transactional
    public void leave(List<Enrolment> enrolments) {
        for (Enrolment enrolment : enrolments) {
            database.sql("update learners set left_at = ? where id = ? and left_at is null")
                    .params(now(), enrolment.id())
                    .update();
        }
    }

    @Override
    public void showNumbers(long classId, boolean shown) {
        database.sql("update school_classes set numbers_shown = ? where id = ?")
                .params(shown, classId)
                .update();
    }

    /** Two lists taken in at once must not give one position twice. */
    private void lock(long classId) {
        database.sql("select id from school_classes where id = ? for update")
                .param(classId)
                .query(Long.class)
                .optional();
    }

    private int lastPosition(long classId) {
        return database.sql("select coalesce(max(position), 0) from learners where class_id = ?")
                .param(classId)
                .query(Integer.class)
                .single();
    }

    private static long insert(JdbcClient.StatementSpec insert) {
        var keys = new GeneratedKeyHolder();
        insert.update(keys, "id");
        Number id = keys.getKeyAs(Number.class);
        if (id == null) {
            throw new IllegalStateException("the database gave no id");
        }
        return id.longValue();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static SchoolClass schoolClass(ResultSet row) throws SQLException {
        return new SchoolClass(
                row.getLong("id"),
                row.getString("name"),
                new SchoolYear(row.getString("school_year")),
                row.getBoolean("numbers_shown"),
                row.getInt("learner_count"),
                row.getInt("set_count"),
                row.getObject("created_at", OffsetDateTime.class).toInstant());
    }

    private static Enrolment enrolment(ResultSet row) throws SQLException {
        return new Enrolment(
                row.getLong("id"),
                row.getLong("person_id"),
                row.getLong("class_id"),
                row.getInt("position"),
                row.getString("name"),
                Optional.ofNullable(row.getString("candidate_number")).orElse(""),
                row.getObject("joined_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("left_at", OffsetDateTime.class)).map(OffsetDateTime::toInstant));
    }
}
