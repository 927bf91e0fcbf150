package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import wallplate.records.Learner;
import wallplate.records.MatchedBy;
import wallplate.records.Progress;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.sheet.SheetCode;

/** Sheets and where they stand, read from their table without what was found on them. */
@Component
class SheetRows {

    private static final String SELECT =
            """
            select s.id, s.class_set_id, s.page, s.state, s.reason, s.awarded, s.available, s.undecided,
                   s.warnings, s.page_picture, s.screen_picture, s.assessed_at, s.checked_at, s.printed_code,
                   s.matched_by, f.file_name, l.id as learner_id, l.position as learner_position,
                   %s as learner_name, l.candidate_number
            """
                    .formatted(Rows.SHOWN_NAME);

    private static final String FROM =
            """
            from sheets s
            join scan_files f on f.id = s.scan_file_id
            left join learners l on l.id = s.learner_id
            left join school_classes c on c.id = l.class_id
            """;

    /** As {@link SheetEntry#needsPerson()} has it. Reads the index sheets_by_progress only: a sheet's row carries its whole assessment. */
    static final String PROGRESS =
            """
            select class_set_id, count(*) as sheets,
                   count(case when state = 'waiting' then 1 end) as waiting,
                   count(case when state = 'reading' then 1 end) as reading,
                   count(case when state = 'read' then 1 end) as done,
                   count(case when state = 'unreadable' then 1 end) as unreadable,
                   count(case when state = 'failed' then 1 end) as failed,
                   count(case when checked_at is null
                       and (state in ('unreadable', 'failed') or undecided > 0 or warned) then 1 end)
                       as needs_person,
                   count(checked_at) as checked
            from sheets
            """;

    private final JdbcClient database;

    SheetRows(JdbcClient database) {
        this.database = database;
    }

    List<SheetEntry> of(long classSetId) {
        return database.sql(SELECT + FROM + "where s.class_set_id = ? order by f.position, s.page")
                .param(classSetId)
                .query((row, number) -> sheet(row, number + 1))
                .list();
    }

    Optional<SheetEntry> find(long id) {
        return database.sql(SELECT
                        + """
                        , (select count(*) from sheets o join scan_files g on g.id = o.scan_file_id
                           where o.class_set_id = s.class_set_id
                             and (g.position < f.position or g.position = f.position and o.page <= s.page)) as place
                        """
                        + FROM
                        + "where s.id = ?")
                .param(id)
                .query((row, number) -> sheet(row, row.getInt("place")))
                .optional();
    }

    Progress progress(long classSetId) {
        return database.sql(PROGRESS + "where class_set_id = ? group by class_set_id")
                .param(classSetId)
                .query((row, number) -> progress(row))
                .optional()
                .orElseGet(() -> Progress.of(List.of()));
    }

    Map<Long, Progress> progress(Collection<Long> classSetIds) {
        Map<Long, Progress> progress = new LinkedHashMap<>();
        if (!classSetIds.isEmpty()) {
            classSetIds.forEach(id -> progress.put(id, Progress.of(List.of())));
            progress.putAll(bySet(database.sql(PROGRESS + "where class_set_id in (:sets) group by class_set_id")
                    .param("sets", classSetIds)));
        }
        return progress;
    }

    Map<Long, Progress> progressOfAll() {
        return bySet(database.sql(PROGRESS + "group by class_set_id order by class_set_id"));
    }

    private static Map<Long, Progress> bySet(JdbcClient.StatementSpec question) {
        Map<Long, Progress> progress = new LinkedHashMap<>();
        question.query((row, number) -> Map.entry(row.getLong("class_set_id"), progress(row)))
                .list()
                .forEach(entry -> progress.put(entry.getKey(), entry.getValue()));
        return progress;
    }

    List<Instant> lastFinished(long classSetId, int most) {
        return database.sql(
                        """
                        select assessed_at from sheets where class_set_id = ? and assessed_at is not null
                        order by assessed_at desc limit ?""")
                .params(classSetId, most)
                .query(OffsetDateTime.class)
                .list()
                .stream()
                .map(OffsetDateTime::toInstant)
                .sorted(Comparator.naturalOrder())
                .toList();
    }

    private static Progress progress(ResultSet row) throws SQLException {
        return new Progress(
                row.getInt("sheets"),
                row.getInt("waiting"),
                row.getInt("reading"),
                row.getInt("done"),
                row.getInt("unreadable"),
                row.getInt("failed"),
                row.getInt("needs_person"),
                row.getInt("checked"));
    }

    private static SheetEntry sheet(ResultSet row, int number) throws SQLException {
        return new SheetEntry(
                row.getLong("id"),
                row.getLong("class_set_id"),
                number,
                row.getString("file_name"),
                row.getInt("page"),
                learner(row),
                SheetState.of(row.getString("state")),
                Rows.optionalText(row, "reason"),
                row.getDouble("awarded"),
                row.getDouble("available"),
                row.getInt("undecided"),
                row.getString("warnings").lines().toList(),
                Rows.optionalInstant(row, "assessed_at"),
                Rows.optionalInstant(row, "checked_at"),
                Rows.optionalText(row, "page_picture"),
                Rows.optionalText(row, "screen_picture"),
                Rows.optionalText(row, "printed_code").flatMap(SheetCode::parse),
                MatchedBy.of(row.getString("matched_by")));
    }

    private static Optional<Learner> learner(ResultSet row) throws SQLException {
        row.getLong("learner_id");
        return row.wasNull() ? Optional.empty() : Optional.of(Rows.learner(row));
    }
}
