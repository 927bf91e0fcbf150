package wallplate.marksheets.jdbc;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.marksheets.Column;
import wallplate.marksheets.Correction;
import wallplate.marksheets.Entry;
import wallplate.marksheets.Heading;
import wallplate.marksheets.Line;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.marksheets.Standing;
import wallplate.marksheets.Submission;
import wallplate.ownership.Share;

@Repository
class JdbcMarkSheets implements MarkSheets {

    private static final String HEADINGS =
            """
            select id, class_id, title, class_name, school_year, term, late_percent, created_by, created_at,
                   submitted_by, submitted_at
            from mark_sheets
            """;

    /** The demonstration has no mark sheet. */
    private static final String NONE_OF_THE_DEMONSTRATION = "1 = 0";

    private final JdbcClient database;
    private final Clock clock;

    JdbcMarkSheets(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public List<Heading> all(Share share) {
        return database.sql(HEADINGS + "where " + condition(share) + " order by created_at desc, id desc")
                .query((row, number) -> heading(row))
                .list();
    }

    private static String condition(Share share) {
        return share.condition("owner_id", NONE_OF_THE_DEMONSTRATION);
    }

    @Override
    public Optional<Heading> find(long id) {
        return database.sql(HEADINGS + "where id = ?")
                .param(id)
                .query((row, number) -> heading(row))
                .optional();
    }

    @Override
    @Transactional
    public long add(NewMarkSheet sheet) {
        var keys = new GeneratedKeyHolder();
        database.sql(
                        """
                        insert into mark_sheets
                            (class_id, title, class_name, school_year, term, late_percent, created_by, created_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        sheet.classId(),
                        sheet.title(),
                        sheet.className(),
                        sheet.schoolYear(),
                        sheet.term(),
                        sheet.latePercent(),
                        sheet.createdBy(),
                        now())
                .update(keys, "id");
        Number id = keys.getKeyAs(Number.class);
        if (id == null) {
            throw new IllegalStateException("the database gave no id");
        }
        int place = 0;
        for (NewMarkSheet.Task task : sheet.tasks()) {
            place++;
            database.sql(
                            """
                            insert into mark_sheet_columns (mark_sheet_id, place, class_set_id, title, weight)
                            values (?, ?, ?, ?, ?)""")
                    .params(id.longValue(), place, task.classSetId(), task.title(), task.weight())
                    .update();
        }
        return id.longValue();
    }

    @Override
    public List<Heading> submitted(String schoolYear, String term, Share share) {
        return database.sql(HEADINGS
                        + "where school_year = ? and term = ? and submitted_at is not null and "
                        + condition(share)
                        + " order by created_at desc, id desc")
                .params(schoolYear, term)
                .query((row, number) -> heading(row))
                .list();
    }

    private static final String OF_A_TERM =
            "where mark_sheet_id in (select id from mark_sheets where school_year = ? and term = ? and submitted_at is not null) ";

    @Override
    public Frozen frozen(String schoolYear, String term) {
        Map<Long, List<Column>> columns = new HashMap<>();
        database.sql("select mark_sheet_id, place, class_set_id, title, weight from mark_sheet_columns " + OF_A_TERM
                        + "order by mark_sheet_id, place")
                .params(schoolYear, term)
                .query(row -> {
                    listOf(columns, row).add(column(row));
                });
        Map<Long, List<Correction>> corrections = new HashMap<>();
        database.sql("select * from mark_sheet_corrections " + OF_A_TERM + "order by id")
                .params(schoolYear, term)
                .query(row -> {
                    listOf(corrections, row).add(correction(row));
                });
        return new Frozen(columns, lines(schoolYear, term), corrections);
    }

    /** Entries and lines come in the same order, so that they are put together without looking either up. */
    private Map<Long, List<Line>> lines(String schoolYear, String term) {
        Map<Long, Map<Integer, List<Entry>>> entries = new HashMap<>();
        database.sql("select mark_sheet_id, line, standing, awarded, available from mark_sheet_entries " + OF_A_TERM
                        + "order by mark_sheet_id, line, place")
                .params(schoolYear, term)
                .query(row -> {
                    entries.computeIfAbsent(row.getLong("mark_sheet_id"), sheet -> new HashMap<>())
                            .computeIfAbsent(row.getInt("line"), line -> new ArrayList<>())
                            .add(entry(row));
                });
        Map<Long, List<Line>> lines = new HashMap<>();
        database.sql("select mark_sheet_id, line, learner_id, name, candidate_number from mark_sheet_lines " + OF_A_TERM
                        + "order by mark_sheet_id, line")
                .params(schoolYear, term)
                .query(row -> {
                    listOf(lines, row).add(line(row, entries.getOrDefault(row.getLong("mark_sheet_id"), Map.of())));
                });
        return lines;
    }

    private static <T> List<T> listOf(Map<Long, List<T>> bySheet, ResultSet row) throws SQLException {
        return bySheet.computeIfAbsent(row.getLong("mark_sheet_id"), sheet -> new ArrayList<>());
    }

    @Override
    public List<Column> columns(long id) {
        return database.sql(
                        """
                        select place, class_set_id, title, weight from mark_sheet_columns
                        where mark_sheet_id = ? order by place""")
                .param(id)
                .query((row, number) -> column(row))
                .list();
    }

    @Override
    public List<Said> said(long id) {
        return database.sql(
                        """
                        select place, learner_id, standing, awarded, available from mark_sheet_standings
                        where mark_sheet_id = ? order by place, learner_id""")
                .param(id)
                .query((row, number) -> new Said(
                        row.getInt("place"),
                        row.getLong("learner_id"),
                        Standing.of(row.getString("standing")),
                        onPaper(row)))
                .list();
    }

    private static Optional<OnPaper> onPaper(ResultSet row) throws SQLException {
        BigDecimal awarded = row.getBigDecimal("awarded");
        return row.wasNull() ? Optional.empty() : Optional.of(new OnPaper(awarded, row.getBigDecimal("available")));
    }

    @Override
    @Transactional
    public void say(long id, List<Said> said) {
        database.sql("delete from mark_sheet_standings where mark_sheet_id = ?").param(id).update();
        for (Said one : said) {
            database.sql(
                            """
                            insert into mark_sheet_standings
                                (mark_sheet_id, place, learner_id, standing, awarded, available)
                            values (?, ?, ?, ?, ?, ?)""")
                    .params(Arrays.asList(
                            id,
                            one.place(),
                            one.learnerId(),
                            one.standing().word(),
                            one.onPaper().map(OnPaper::awarded).orElse(null),
                            one.onPaper().map(OnPaper::available).orElse(null)))
                    .update();
        }
    }

    @Override
    public List<Line> frozenLines(long id) {
        Map<Integer, List<Entry>> entries = new LinkedHashMap<>();
        database.sql(
                        """
                        select line, standing, awarded, available from mark_sheet_entries
                        where mark_sheet_id = ? order by line, place""")
                .param(id)
                .query(row -> {
                    entries.computeIfAbsent(row.getInt("line"), line -> new ArrayList<>()).add(entry(row));
                });
        return database.sql(
                        """
                        select line, learner_id, name, candidate_number from mark_sheet_lines
                        where mark_sheet_id = ? order by line""")
                .param(id)
                .query((row, number) -> line(row, entries))
                .list();
    }

    @Override
    public List<Correction> corrections(long id) {
        return database.sql(
                        """
                        select line, place, standing, awarded, available, reason, corrected_by, corrected_at
                        from mark_sheet_corrections where mark_sheet_id = ? order by id""")
                .param(id)
                .query((row, number) -> correction(row))
                .list();
    }

    @Override
    @Transactional
    public boolean submit(long id, List<Line> lines, String submittedBy) {
        int submitted = database.sql(
                        "update mark_sheets set submitted_at = ?, submitted_by = ? where id = ? and submitted_at is null")
                .params(now(), submittedBy, id)
                .update();
        if (submitted == 0) {
            return false;
        }
        for (Line line : lines) {
            database.sql(
                            """
                            insert into mark_sheet_lines (mark_sheet_id, line, learner_id, name, candidate_number)
                            values (?, ?, ?, ?, ?)""")
                    .params(id, line.number(), line.learnerId().orElse(null), line.name(), line.candidateNumber())
                    .update();
            for (int place = 1; place <= line.entries().size(); place++) {
                Entry entry = line.entries().get(place - 1);
                database.sql(
                                """
                                insert into mark_sheet_entries
                                    (mark_sheet_id, line, place, standing, awarded, available)
                                values (?, ?, ?, ?, ?, ?)""")
                        .params(id, line.number(), place, entry.standing().word(), entry.awarded(), entry.available())
                        .update();
            }
        }
        return true;
    }

    @Override
    public void correct(long id, Correction correction) {
        database.sql(
                        """
                        insert into mark_sheet_corrections
                            (mark_sheet_id, line, place, standing, awarded, available, reason, corrected_by, corrected_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        id,
                        correction.line(),
                        correction.place(),
                        correction.entry().standing().word(),
                        correction.entry().awarded(),
                        correction.entry().available(),
                        correction.reason(),
                        correction.correctedBy(),
                        correction.correctedAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    @Override
    public boolean throwAway(long id) {
        return database.sql("delete from mark_sheets where id = ? and submitted_at is null")
                        .param(id)
                        .update()
                > 0;
    }

    @Override
    public List<Place> placesOf(long learnerId, Share share) {
        return database.sql(
                        """
                        select p.mark_sheet_id, p.line
                        from mark_sheet_lines p
                        join learners l on l.id = p.learner_id
                        join mark_sheets m on m.id = p.mark_sheet_id
                        where l.person_id = (select person_id from learners where id = ?) and %s
                        order by m.submitted_at desc, p.mark_sheet_id desc"""
                                .formatted(share.condition("m.owner_id", NONE_OF_THE_DEMONSTRATION)))
                .param(learnerId)
                .query((row, number) -> new Place(row.getLong("mark_sheet_id"), row.getInt("line")))
                .list();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static Column column(ResultSet row) throws SQLException {
        return new Column(
                row.getInt("place"),
                Optional.ofNullable(row.getObject("class_set_id", Long.class)),
                row.getString("title"),
                row.getBigDecimal("weight"));
    }

    /** @param entries of the mark sheet, by line */
    private static Line line(ResultSet row, Map<Integer, List<Entry>> entries) throws SQLException {
        return new Line(
                row.getInt("line"),
                Optional.ofNullable(row.getObject("learner_id", Long.class)),
                row.getString("name"),
                row.getString("candidate_number"),
                entries.getOrDefault(row.getInt("line"), List.of()));
    }

    private static Correction correction(ResultSet row) throws SQLException {
        return new Correction(
                row.getInt("line"),
                row.getInt("place"),
                entry(row),
                row.getString("reason"),
                row.getString("corrected_by"),
                row.getObject("corrected_at", OffsetDateTime.class).toInstant());
    }

    private static Entry entry(ResultSet row) throws SQLException {
        return new Entry(
                Standing.of(row.getString("standing")), row.getBigDecimal("awarded"), row.getBigDecimal("available"));
    }

    private static Heading heading(ResultSet row) throws SQLException {
        OffsetDateTime submitted = row.getObject("submitted_at", OffsetDateTime.class);
        return new Heading(
                row.getLong("id"),
                Optional.ofNullable(row.getObject("class_id", Long.class)),
                row.getString("title"),
                row.getString("class_name"),
                row.getString("school_year"),
                row.getString("term"),
                row.getInt("late_percent"),
                row.getString("created_by"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                submitted == null
                        ? Optional.empty()
                        : Optional.of(new Submission(row.getString("submitted_by"), submitted.toInstant())));
    }
}
