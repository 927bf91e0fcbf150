package wallplate.moderation.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.moderation.Decision;
import wallplate.moderation.DecisionEntry;
import wallplate.moderation.Draw;
import wallplate.moderation.DrawnSheet;
import wallplate.moderation.FirstMark;
import wallplate.moderation.Moderation;
import wallplate.moderation.Moderations;
import wallplate.moderation.PairedMark;
import wallplate.moderation.PairedTotal;
import wallplate.moderation.SampleSize;
import wallplate.moderation.SampledSheet;
import wallplate.moderation.SamplingRule;

@Repository
class JdbcModerations implements Moderations {

    private final JdbcClient database;
    private final Clock clock;

    JdbcModerations(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Moderation> of(long classSetId) {
        return whole(database.sql("select * from moderations where class_set_id = ? order by id desc")
                .param(classSetId)
                .query((row, number) -> bare(row))
                .list());
    }

    @Override
    @Transactional(readOnly = true)
    public List<Moderation> givenTo(long account, int most) {
        return whole(database.sql(
                        """
                        select * from moderations where moderator_id = ?
                        order by case when handed_in_at is null then 0 else 1 end, id desc limit ?""")
                .params(account, most)
                .query((row, number) -> bare(row))
                .list());
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Moderation> find(long id) {
        return whole(database.sql("select * from moderations where id = ?")
                        .param(id)
                        .query((row, number) -> bare(row))
                        .list())
                .stream()
                .findFirst();
    }

    @Override
    public Optional<Moderation> take(long id) {
        database.sql("select id from moderations where id = ? for update")
                .param(id)
                .query(Long.class)
                .optional();
        return find(id);
    }

    @Override
    @Transactional
    public Moderation add(Draw draw) {
        SampleSize size = draw.rule().size();
        var keys = new GeneratedKeyHolder();
        database.sql(
                        """
                        insert into moderations (class_set_id, choice, size_sheets, size_percent, chance_seed,
                            candidates, left_out, moderator, drawn_by, drawn_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        draw.classSetId(),
                        draw.rule().choice().word(),
                        size instanceof SampleSize.Number number ? number.sheets() : null,
                        size instanceof SampleSize.Percent percent ? percent.percent() : null,
                        draw.rule().seed(),
                        draw.candidates(),
                        draw.leftOut(),
                        draw.moderator(),
                        draw.drawnBy(),
                        now())
                .update(keys, "id");
        Number id = keys.getKeyAs(Number.class);
        if (id == null) {
            throw new IllegalStateException("the database gave no id");
        }
        for (int index = 0; index < draw.sheets().size(); index++) {
            insert(id.longValue(), index + 1, draw.sheets().get(index));
        }
        return find(id.longValue()).orElseThrow();
    }

    private void insert(long id, int place, DrawnSheet sheet) {
        database.sql("insert into moderation_sheets (moderation_id, place, sheet_id, first_total, available) values (?, ?, ?, ?, ?)")
                .params(id, place, sheet.sheetId(), sheet.total(), sheet.available())
                .update();
        for (FirstMark mark : sheet.marks()) {
            database.sql(
                            """
                            insert into moderation_first_marks
                                (moderation_id, place, criterion, position, title, available, awarded)
                            values (?, ?, ?, ?, ?, ?, ?)""")
                    .params(id, place, mark.criterion(), mark.position(), mark.title(), mark.available(), mark.awarded())
                    .update();
        }
    }

    @Override
    public Map<String, Double> secondMarks(long id, int place) {
        Map<String, Double> marks = new LinkedHashMap<>();
        database.sql("select criterion, awarded from moderation_second_marks where moderation_id = ? and place = ? order by criterion")
                .params(id, place)
                .query(row -> {
                    marks.put(row.getString("criterion"), row.getDouble("awarded"));
                });
        return marks;
    }

    @Override
    @Transactional
    public void mark(long id, int place, Map<String, Double> marks, double total) {
        database.sql("delete from moderation_second_marks where moderation_id = ? and place = ?")
                .params(id, place)
                .update();
        marks.forEach((criterion, awarded) -> database.sql(
                        "insert into moderation_second_marks (moderation_id, place, criterion, awarded) values (?, ?, ?, ?)")
                .params(id, place, criterion, awarded)
                .update());
        database.sql("update moderation_sheets set second_total = ?, marked_at = ? where moderation_id = ? and place = ?")
                .params(total, now(), id, place)
                .update();
    }

    @Override
    public void handIn(long id) {
        database.sql("update moderations set handed_in_at = ? where id = ? and handed_in_at is null")
                .params(now(), id)
                .update();
    }

    @Override
    public List<PairedMark> pairs(long id) {
        return database.sql(
                        """
                        select f.place, f.criterion, f.position, f.title, f.available, f.awarded as first_awarded,
                               s.awarded as second_awarded
                        from moderation_first_marks f
                        join moderation_second_marks s on s.moderation_id = f.moderation_id and s.place = f.place
                            and s.criterion = f.criterion
                        where f.moderation_id = ? order by f.position, f.place""")
                .param(id)
                .query((row, number) -> new PairedMark(
                        row.getInt("place"),
                        row.getString("criterion"),
                        row.getInt("position"),
                        row.getString("title"),
                        row.getDouble("available"),
                        row.getDouble("first_awarded"),
                        row.getDouble("second_awarded")))
                .list();
    }

    @Override
    public List<PairedTotal> totals(long id) {
        return database.sql(
                        """
                        select place, sheet_id, available, first_total, second_total from moderation_sheets
                        where moderation_id = ? and second_total is not null order by place""")
                .param(id)
                .query((row, number) -> new PairedTotal(
                        row.getInt("place"),
                        row.getLong("sheet_id"),
                        row.getDouble("available"),
                        row.getDouble("first_total"),
                        row.getDouble("second_total")))
                .list();
    }

    @Override
    public void decide(long id, DecisionEntry entry) {
        Decision.Adjust adjust = entry.decision() instanceof Decision.Adjust found ? found : null;
        database.sql(
                        """
                        insert into moderation_decisions (moderation_id, decision, criterion, adjusted_by, from_total,
                            to_total, reason, decided_by, decided_at, outcome)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        id,
                        entry.decision().word(),
                        adjust == null ? null : adjust.criterion(),
                        adjust == null ? null : adjust.by(),
                        adjust == null ? null : adjust.fromTotal(),
                        adjust == null ? null : adjust.toTotal(),
                        entry.reason(),
                        entry.decidedBy(),
                        timestamp(entry.decidedAt()),
                        entry.outcome())
                .update();
    }

    private static Moderation bare(ResultSet row) throws SQLException {
        int sheets = row.getInt("size_sheets");
        SampleSize size = row.wasNull() ? new SampleSize.Percent(row.getInt("size_percent")) : new SampleSize.Number(sheets);
        return new Moderation(
                row.getLong("id"),
                row.getLong("class_set_id"),
                new SamplingRule(SamplingRule.Choice.of(row.getString("choice")), size, row.getLong("chance_seed")),
                row.getInt("candidates"),
                row.getInt("left_out"),
                row.getString("moderator"),
                row.getString("drawn_by"),
                instant(row, "drawn_at").orElseThrow(),
                instant(row, "handed_in_at"),
                List.of(),
                List.of());
    }

    /** With their sheets and decisions, which are asked for once for all of them. */
    private List<Moderation> whole(List<Moderation> bare) {
        if (bare.isEmpty()) {
            return bare;
        }
        List<Long> ids = bare.stream().map(Moderation::id).toList();
        Map<Long, List<SampledSheet>> sheets = sheets(ids);
        Map<Long, List<DecisionEntry>> decisions = decisions(ids);
        return bare.stream()
                .map(moderation -> moderation.with(
                        sheets.getOrDefault(moderation.id(), List.of()), decisions.getOrDefault(moderation.id(), List.of())))
                .toList();
    }

    private Map<Long, List<SampledSheet>> sheets(List<Long> ids) {
        Map<Long, List<SampledSheet>> sheets = new HashMap<>();
        database.sql("select moderation_id, place, sheet_id, marked_at from moderation_sheets where moderation_id in (:ids) order by place")
                .param("ids", ids)
                .query(row -> {
                    sheets.computeIfAbsent(row.getLong("moderation_id"), id -> new ArrayList<>())
                            .add(new SampledSheet(row.getInt("place"), row.getLong("sheet_id"), instant(row, "marked_at")));
                });
        return sheets;
    }

    private Map<Long, List<DecisionEntry>> decisions(List<Long> ids) {
        Map<Long, List<DecisionEntry>> decisions = new HashMap<>();
        database.sql("select * from moderation_decisions where moderation_id in (:ids) order by id desc")
                .param("ids", ids)
                .query(row -> {
                    decisions
                            .computeIfAbsent(row.getLong("moderation_id"), id -> new ArrayList<>())
                            .add(new DecisionEntry(
                                    decision(row),
                                    row.getString("reason"),
                                    row.getString("decided_by"),
                                    instant(row, "decided_at").orElseThrow(),
                                    row.getString("outcome")));
                });
        return decisions;
    }

    private static Decision decision(ResultSet row) throws SQLException {
        String word = row.getString("decision");
        return switch (word) {
            case "accept" -> new Decision.Accept();
            case "mark-again" -> new Decision.MarkAgain();
            case "adjust" -> new Decision.Adjust(
                    row.getString("criterion"),
                    row.getDouble("adjusted_by"),
                    row.getDouble("from_total"),
                    row.getDouble("to_total"));
            default -> throw new IllegalStateException("the database has a decision that is not known: " + word);
        };
    }

    private OffsetDateTime now() {
        return timestamp(clock.instant());
    }

    private static OffsetDateTime timestamp(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    private static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
