package wallplate.records.jdbc;

import java.time.Clock;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.marking.MarkedSheet;
import wallplate.records.HomeCheck;
import wallplate.records.HomeChecks;
import wallplate.records.SelfCheckEntry;

@Repository
class JdbcHomeChecks implements HomeChecks {

    private static final int CODE_LENGTH = 8;

    private final JdbcClient database;
    private final Clock clock;

    JdbcHomeChecks(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public Optional<String> codeOf(long classId) {
        return database.sql("select check_code from school_classes where id = ? and check_code is not null")
                .param(classId)
                .query(String.class)
                .optional();
    }

    @Override
    public String makeCode(long classId) {
        String code = RandomCode.ofLength(CODE_LENGTH);
        database.sql("update school_classes set check_code = ? where id = ?")
                .params(code, classId)
                .update();
        return code;
    }

    @Override
    public Optional<Long> learner(String classCode, String who) {
        String named = who.strip().toLowerCase(Locale.ROOT);
        List<Long> found = named.isEmpty()
                ? List.of()
                : database.sql(
                                """
                                select l.id from learners l join school_classes c on c.id = l.class_id
                                where c.check_code = :code and l.left_at is null
                                  and (lower(l.name) = :who or lower(coalesce(l.candidate_number, '')) = :who)""")
                        .param("code", RandomCode.plain(classCode))
                        .param("who", named)
                        .query(Long.class)
                        .list();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    @Override
    @Transactional
    public boolean keep(SelfCheckEntry check, long learnerId) {
        int isFirst = database.sql("update self_checks set kept = true where id = ? and not kept")
                .param(check.id())
                .update();
        if (isFirst == 0 || check.found().isEmpty()) {
            return false;
        }
        MarkedSheet marked = check.found().get().marked();
        Map<String, String> verdicts = new LinkedHashMap<>();
        marked.marks().forEach(mark -> verdicts.put(mark.criterion(), mark.verdict().word()));
        database.sql(
                        """
                        insert into home_checks (learner_id, task_id, verdicts, awarded, available, kept_at)
                        values (?, ?, ?, ?, ?, ?)""")
                .params(
                        learnerId,
                        check.taskId(),
                        VerdictLines.write(verdicts),
                        marked.awarded(),
                        marked.available(),
                        Rows.timestamp(clock.instant()))
                .update();
        return true;
    }

    @Override
    public List<HomeCheck> of(Collection<Long> learnerIds) {
        return learnerIds.isEmpty()
                ? List.of()
                : database.sql(
                                """
                                select h.id, t.title, h.verdicts, h.awarded, h.available, h.kept_at
                                from home_checks h join drawing_tasks t on t.id = h.task_id
                                where h.learner_id in (:learners) order by h.kept_at desc, h.id desc""")
                        .param("learners", learnerIds)
                        .query((row, number) -> new HomeCheck(
                                row.getLong("id"),
                                row.getString("title"),
                                VerdictLines.read(row.getString("verdicts")),
                                row.getDouble("awarded"),
                                row.getDouble("available"),
                                Rows.instant(row, "kept_at")))
                        .list();
    }
}
