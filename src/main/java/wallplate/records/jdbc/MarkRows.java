package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
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
    private static final String SELECT =
            """
            select m.*, c.verdict as changed_verdict, c.awarded as changed_awarded, c.reason as change_reason,
                   c.changed_by, c.changed_at
            from marks m
            join sheets s on s.id = m.sheet_id
            join scan_files f on f.id = s.scan_file_id
            left join mark_changes c on c.sheet_id = m.sheet_id and c.criterion = m.criterion
                and c.id = (select max(l.id) from mark_changes l
                            where l.sheet_id = m.sheet_id and l.criterion = m.criterion)
            """;

    private final JdbcClient database;

    MarkRows(JdbcClient database) {
        this.database = database;
    }

    List<MarkEntry> ofSheet(long sheetId) {
        return database.sql(SELECT + "where m.sheet_id = ? order by m.position")
                .param(sheetId)
                .query((row, number) -> mark(row))
                .list();
    }

    List<MarkEntry> ofSet(long classSetId) {
        return database.sql(SELECT + "where s.class_set_id = ? order by f.position, s.page, m.position")
                .param(classSetId)
                .query((row, number) -> mark(row))
                .list();
    }

    List<MarkEntry> ofSet(long classSetId, String criterion) {
        return database.sql(SELECT + "where s.class_set_id = ? and m.criterion = ? order by f.position, s.page")
                .params(classSetId, criterion)
                .query((row, number) -> mark(row))
                .list();
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
        database.sql("update sheets set page_width_mm = ?, page_height_mm = ?, page_pixels_per_mm = ? where id = ?")
                .params(kept.page().widthMm(), kept.page().heightMm(), kept.page().pixelsPerMm(), sheetId)
                .update();
        database.sql("delete from marks where sheet_id = ?").param(sheetId).update();
        int position = 0;
        for (Mark mark : kept.marked().marks()) {
            position++;
            Optional<String> evidence = mark.key()
                    .flatMap(kept.measured()::measurement)
                    .map(Measurement::evidence)
                    .filter(strokes -> !strokes.isEmpty())
                    .map(EvidenceText::write);
            insert(sheetId, position, mark, evidence);
        }
    }

    private void insert(long sheetId, int position, Mark mark, Optional<String> evidence) {
        MarkEntry.Reading reading = MarkEntry.of(sheetId, position, mark).reading();
        database.sql(
                        """
                        insert into marks (sheet_id, criterion, position, title, measured_key, verdict, awarded,
                            available, tolerance, unit, expected, expected_rounded, expected_word, finding, measured,
                            uncertainty, measured_word, uncertain_reason, slips, feedback, evidence)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(
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
                        evidence.orElse(null))
                .update();
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
        return database.sql(
                        """
                        select criterion, verdict as changed_verdict, awarded as changed_awarded,
                               reason as change_reason, changed_by, changed_at
                        from mark_changes where sheet_id = ? order by id desc""")
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
                row.getString("changed_verdict") == null ? Optional.empty() : Optional.of(changeOf(row)));
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
