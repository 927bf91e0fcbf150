package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import wallplate.marking.Mark;
import wallplate.marking.Verdict;
import wallplate.measure.Measurement;
import wallplate.records.CriterionEntry;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.MarkPlace;

/** Marks and the decisions about them, in their tables. */
@Component
class MarkRows {

    private static final int LONGEST_TITLE = 400;
    private static final int LONGEST_SENTENCE = 2000;
    private static final int LONGEST_REASON = 1000;
    /** All but the strokes, which are long and which lists do not show. */
    private static final String SELECT =
            """
            select m.sheet_id, m.criterion, m.position, m.title, m.measured_key, m.verdict, m.awarded, m.available,
                   m.tolerance, m.unit, m.expected, m.expected_rounded, m.expected_word, m.finding, m.measured,
                   m.uncertainty, m.measured_word, m.uncertain_reason, m.slips, m.feedback
            from marks m
            """;

    private static final String OF_SET =
            """
            join sheets s on s.id = m.sheet_id
            join scan_files f on f.id = s.scan_file_id
            where s.class_set_id = ?
            """;

    private static final String CHANGE =
            """
            select id, sheet_id, criterion, verdict as changed_verdict, awarded as changed_awarded,
                   reason as change_reason, changed_by, changed_at
            from mark_changes
            """;

    private static final String INSERT =
            """
            insert into marks (sheet_id, criterion, position, title, measured_key, verdict, awarded,
                available, tolerance, unit, expected, expected_rounded, expected_word, finding, measured,
                uncertainty, measured_word, uncertain_reason, slips, feedback, evidence)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";

    private final JdbcClient database;
    private final JdbcOperations batches;

    MarkRows(JdbcClient database, JdbcOperations batches) {
        this.database = database;
        this.batches = batches;
    }

    List<MarkEntry> ofSheet(long sheetId) {
        return marks(
                database.sql(SELECT + "where m.sheet_id = ? order by m.position").param(sheetId),
                database.sql(CHANGE + "where sheet_id = ? order by id").param(sheetId));
    }

    List<MarkEntry> ofSet(long classSetId) {
        return marks(
                database.sql(SELECT + OF_SET + "order by f.position, s.page, m.position").param(classSetId),
                database.sql(CHANGE + "where sheet_id in (select id from sheets where class_set_id = ?) order by id")
                        .param(classSetId));
    }

    List<MarkEntry> ofSet(long classSetId, String criterion) {
        return marks(
                database.sql(SELECT + OF_SET + "and m.criterion = ? order by f.position, s.page")
                        .params(classSetId, criterion),
                database.sql(
                                CHANGE
                                        + """
                                        where sheet_id in (select id from sheets where class_set_id = ?)
                                          and criterion = ? order by id""")
                        .params(classSetId, criterion));
    }

    /** Marks with what was decided last about each: few marks are changed, so that the changes are read on their own. */
    private static List<MarkEntry> marks(JdbcClient.StatementSpec marks, JdbcClient.StatementSpec changes) {
        Map<Decided, MarkChange> last = new HashMap<>();
        changes.query((RowCallbackHandler) row -> last.put(
                new Decided(row.getLong("sheet_id"), row.getString("criterion")), changeOf(row)));
        return marks.query((row, number) -> mark(row)).list().stream()
                .map(mark -> withChange(mark, last.get(new Decided(mark.sheetId(), mark.criterion()))))
                .toList();
    }

    /** A criterion of a sheet about which a person decided. */
    private record Decided(long sheetId, String criterion) {}

    /** A change without a verdict gave the guideline's mark back. */
    private static MarkEntry withChange(MarkEntry mark, @Nullable MarkChange change) {
        return change == null || change.verdict().isEmpty() ? mark : mark.withChange(change);
    }

    List<CriterionEntry> criteria(long classSetId) {
        return database.sql(
                        """
                        select m.criterion, m.title from marks m join sheets s on s.id = m.sheet_id
                        where s.class_set_id = ? group by m.criterion, m.title
                        order by min(m.position), m.criterion, m.title""")
                .param(classSetId)
                .query((row, number) -> new CriterionEntry(row.getString("criterion"), row.getString("title")))
                .list();
    }

    List<MarkPlace> places(long classSetId, String criterion) {
        return database.sql(
                        """
                        select m.sheet_id, m.evidence, s.page_width_mm, s.page_height_mm, s.page_pixels_per_mm
                        from marks m join sheets s on s.id = m.sheet_id
                        where s.class_set_id = ? and m.criterion = ? and m.evidence is not null""")
                .params(classSetId, criterion)
                .query((row, number) -> new MarkPlace(
                        row.getLong("sheet_id"),
                        row.getDouble("page_width_mm"),
                        row.getDouble("page_height_mm"),
                        row.getDouble("page_pixels_per_mm"),
                        EvidenceText.read(row.getString("evidence"))))
                .list();
    }

    /** Puts the guideline's marks in place of the present ones, with the places that they were measured at. */
    void replace(long sheetId, KeptAssessment kept) {
        keepPage(sheetId, kept);
        database.sql("delete from marks where sheet_id = ?").param(sheetId).update();
        List<@Nullable Object[]> rows = new ArrayList<>();
        for (Mark mark : kept.marked().marks()) {
            rows.add(row(sheetId, rows.size() + 1, mark, place(mark, kept)));
        }
        // One message to the database instead of one for each mark.
        batches.batchUpdate(INSERT, rows);
    }

    /** Adds the places to marks that were kept without them. */
    void keepPlaces(long sheetId, KeptAssessment kept) {
        keepPage(sheetId, kept);
        for (Mark mark : kept.marked().marks()) {
            place(mark, kept).ifPresent(place -> database.sql("update marks set evidence = ? where sheet_id = ? and criterion = ?")
                    .params(place, sheetId, mark.criterion())
                    .update());
        }
    }

    private void keepPage(long sheetId, KeptAssessment kept) {
        database.sql("update sheets set page_width_mm = ?, page_height_mm = ?, page_pixels_per_mm = ? where id = ?")
                .params(kept.page().widthMm(), kept.page().heightMm(), kept.page().pixelsPerMm(), sheetId)
                .update();
    }

    /** The strokes that a mark's value was taken from. */
    private static Optional<String> place(Mark mark, KeptAssessment kept) {
        return mark.key()
                .flatMap(kept.measured()::measurement)
                .map(Measurement::evidence)
                .filter(strokes -> !strokes.isEmpty())
                .map(EvidenceText::write);
    }

    private static @Nullable Object[] row(long sheetId, int position, Mark mark, Optional<String> evidence) {
        MarkEntry.Reading reading = MarkEntry.of(sheetId, position, mark).reading();
        return new @Nullable Object[] {
            sheetId,
            mark.criterion(),
            position,
            Rows.cut(mark.title(), LONGEST_TITLE),
            mark.key().orElse(null),
            mark.verdict().word(),
            mark.awarded(),
            mark.available(),
            mark.tolerance().orElse(null),
            reading.unit(),
            Rows.orNull(reading.expected()),
            Rows.orNull(reading.expectedRounded()),
            reading.expectedWord().orElse(null),
            reading.finding(),
            Rows.orNull(reading.measured()),
            Rows.orNull(reading.uncertainty()),
            reading.measuredWord().orElse(null),
            reading.uncertainReason()
                    .map(reason -> Rows.cut(reason, LONGEST_SENTENCE))
                    .orElse(null),
            String.join(" ", mark.slips()),
            Rows.cut(mark.feedback(), LONGEST_SENTENCE),
            evidence.orElse(null)
        };
    }

    void change(long sheetId, MarkChange change) {
        database.sql(
                        """
                        insert into mark_changes (sheet_id, criterion, verdict, awarded, reason, changed_by, changed_at)
                        values (?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        sheetId,
                        change.criterion(),
                        change.verdict().map(Verdict::word).orElse(null),
                        change.verdict().isPresent() ? change.awarded() : null,
                        Rows.cut(change.reason(), LONGEST_REASON),
                        change.changedBy(),
                        Rows.timestamp(change.changedAt()))
                .update();
    }

    List<MarkChange> changes(long sheetId) {
        return database.sql(CHANGE + "where sheet_id = ? order by id desc")
                .param(sheetId)
                .query((row, number) -> changeOf(row))
                .list();
    }

    private static MarkEntry mark(ResultSet row) throws SQLException {
        return new MarkEntry(
                row.getLong("sheet_id"),
                row.getString("criterion"),
                row.getInt("position"),
                row.getString("title"),
                Rows.optionalText(row, "measured_key"),
                verdict(row.getString("verdict")),
                row.getDouble("awarded"),
                row.getDouble("available"),
                Rows.optionalNumber(row, "tolerance"),
                reading(row),
                row.getString("slips").isEmpty() ? List.of() : List.of(row.getString("slips").split(" ")),
                row.getString("feedback"),
                Optional.empty());
    }

    private static MarkEntry.Reading reading(ResultSet row) throws SQLException {
        return new MarkEntry.Reading(
                row.getString("unit"),
                Rows.optionalNumber(row, "expected"),
                Rows.optionalNumber(row, "expected_rounded"),
                Rows.optionalText(row, "expected_word"),
                row.getString("finding"),
                Rows.optionalNumber(row, "measured"),
                Rows.optionalNumber(row, "uncertainty"),
                Rows.optionalText(row, "measured_word"),
                Rows.optionalText(row, "uncertain_reason"));
    }

    private static MarkChange changeOf(ResultSet row) throws SQLException {
        return new MarkChange(
                row.getString("criterion"),
                Rows.optionalText(row, "changed_verdict").map(MarkRows::verdict),
                row.getDouble("changed_awarded"),
                row.getString("change_reason"),
                row.getString("changed_by"),
                Rows.instant(row, "changed_at"));
    }

    private static Verdict verdict(String word) {
        for (Verdict verdict : Verdict.values()) {
            if (verdict.word().equals(word)) {
                return verdict;
            }
        }
        throw new IllegalStateException("the database has a verdict that is not known: " + word);
    }
}
