package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import wallplate.records.Learner;
import wallplate.records.MatchedBy;
import wallplate.records.SheetMatching;
import wallplate.sheet.SheetCode;

/** Whose sheet is whose, in the table of the sheets; every method expects a transaction. */
@Component
class SheetLearners {

    private final JdbcClient database;

    SheetLearners(JdbcClient database) {
        this.database = database;
    }

    /** Keeps what the printed code of a sheet says and matches its set anew. */
    void read(long sheetId, SheetCode code) {
        database.sql("update sheets set printed_code = ? where id = ?")
                .params(code.payload(), sheetId)
                .update();
        match(setOf(sheetId));
    }

    void give(Map<Long, Optional<Long>> learnerBySheet) {
        if (learnerBySheet.isEmpty()) {
            return;
        }
        long classSetId = setOf(learnerBySheet.keySet().iterator().next());
        learnerBySheet.forEach((sheet, learner) -> {
            learner.ifPresent(one -> takeFromOthers(one, sheet, classSetId));
            database.sql("update sheets set learner_id = ?, matched_by = ? where id = ? and class_set_id = ?")
                    .params(learner.orElse(null), MatchedBy.HAND.word(), sheet, classSetId)
                    .update();
        });
        match(classSetId);
    }

    /** Another sheet that a person gave to the learner is matched like the rest again. */
    private void takeFromOthers(long learner, long sheet, long classSetId) {
        database.sql("update sheets set learner_id = null, matched_by = ? where learner_id = ? and id <> ? and class_set_id = ?")
                .params(MatchedBy.ORDER.word(), learner, sheet, classSetId)
                .update();
    }

    void match(long classSetId) {
        String taskYaml = database.sql("select task_yaml from class_sets where id = ? for update")
                .param(classSetId)
                .query(String.class)
                .single();
        List<Row> rows = rows(classSetId);
        SheetMatching matching = new SheetMatching(
                KeptYaml.task(taskYaml).id(),
                learners(classSetId),
                rows.stream().map(Row::inPile).toList());
        Map<Long, Row> before = new HashMap<>();
        rows.forEach(row -> before.put(row.inPile().sheetId(), row));
        matching.matches().stream()
                .filter(match -> !before.get(match.sheetId()).is(match))
                .forEach(this::write);
    }

    private void write(SheetMatching.Match match) {
        database.sql("update sheets set learner_id = ?, matched_by = ? where id = ?")
                .params(match.learnerId().orElse(null), match.by().word(), match.sheetId())
                .update();
    }

    private long setOf(long sheetId) {
        return database.sql("select class_set_id from sheets where id = ?")
                .param(sheetId)
                .query(Long.class)
                .single();
    }

    /** By their own names, because files are named so, also where the class goes by numbers. */
    private List<Learner> learners(long classSetId) {
        return database.sql(
                        """
                        select l.id, l.position, l.name, l.candidate_number
                        from learners l join class_sets c on c.class_id = l.class_id
                        where c.id = ? and (l.left_at is null or l.left_at > c.created_at) order by l.position""")
                .param(classSetId)
                .query((row, number) -> new Learner(
                        row.getLong("id"),
                        row.getInt("position"),
                        row.getString("name"),
                        Rows.optionalText(row, "candidate_number").orElse("")))
                .list();
    }

    private List<Row> rows(long classSetId) {
        return database.sql(
                        """
                        select s.id, f.file_name, s.printed_code, s.matched_by, s.learner_id
                        from sheets s join scan_files f on f.id = s.scan_file_id
                        where s.class_set_id = ? order by f.position, s.page""")
                .param(classSetId)
                .query((row, number) -> row(row))
                .list();
    }

    private static Row row(ResultSet row) throws SQLException {
        MatchedBy by = MatchedBy.of(row.getString("matched_by"));
        return new Row(
                new SheetMatching.Pile(
                        row.getLong("id"),
                        row.getString("file_name"),
                        Rows.optionalText(row, "printed_code").flatMap(SheetCode::parse),
                        by == MatchedBy.HAND,
                        Optional.ofNullable(row.getObject("learner_id", Long.class))),
                by);
    }

    /** A sheet as it lies in the pile, and how it was matched so far. */
    private record Row(SheetMatching.Pile inPile, MatchedBy by) {

        boolean is(SheetMatching.Match match) {
            return by == match.by() && inPile.learnerId().equals(match.learnerId());
        }
    }
}
