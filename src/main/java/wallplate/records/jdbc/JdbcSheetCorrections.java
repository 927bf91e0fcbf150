package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.MarkedSheet;
import wallplate.measure.MeasuredSheet;
import wallplate.records.KeptAssessment;
import wallplate.records.PageFacts;
import wallplate.records.SheetCorrection;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetState;
import wallplate.sheet.LevelPage;

@Repository
class JdbcSheetCorrections implements SheetCorrections {

    private final JdbcClient database;
    private final JdbcSheets sheets;

    JdbcSheetCorrections(JdbcClient database, JdbcSheets sheets) {
        this.database = database;
        this.sheets = sheets;
    }

    @Override
    public List<SheetCorrection> of(long sheetId) {
        return database.sql("select * from sheet_corrections where sheet_id = ? order by id desc")
                .param(sheetId)
                .query((row, number) -> correction(row))
                .list();
    }

    @Override
    public Optional<AsRead> asRead(long sheetId) {
        return database.sql("select assessment, page_picture, screen_picture, refused from sheet_first_readings where sheet_id = ?")
                .param(sheetId)
                .query((row, number) -> asRead(row))
                .optional()
                .or(() -> database.sql(
                                """
                                select assessment, page_picture, screen_picture, null as refused from sheets
                                where id = ? and assessment is not null""")
                        .param(sheetId)
                        .query((row, number) -> asRead(row))
                        .optional());
    }

    @Override
    public Optional<String> asReadPicture(long sheetId) {
        return database.sql(
                        """
                        select coalesce(f.page_picture, s.page_picture)
                        from sheets s left join sheet_first_readings f on f.sheet_id = s.id
                        where s.id = ? and coalesce(f.page_picture, s.page_picture) is not null""")
                .param(sheetId)
                .query(String.class)
                .optional();
    }

    private static AsRead asRead(ResultSet row) throws SQLException {
        return new AsRead(
                AssessmentJson.read(row.getString("assessment")),
                row.getString("page_picture"),
                row.getString("screen_picture"),
                Rows.optionalText(row, "refused"));
    }

    @Override
    @Transactional
    public void refuseWithoutScale(
            long sheetId,
            String reason,
            String resultJson,
            LevelPage page,
            String pagePicture,
            String screenPicture) {
        sheets.refuse(sheetId, reason, resultJson);
        KeptAssessment nothingMeasured = new KeptAssessment(
                PageFacts.of(page),
                new MeasuredSheet(List.of(), Map.of(), Optional.empty()),
                new MarkedSheet("", List.of(), List.of()));
        database.sql("delete from sheet_first_readings where sheet_id = ?").param(sheetId).update();
        database.sql(
                        """
                        insert into sheet_first_readings
                            (sheet_id, page_picture, screen_picture, warnings, assessment, result_json, refused)
                        select id, ?, ?, '', ?, result_json, reason from sheets where id = ?""")
                .params(pagePicture, screenPicture, AssessmentJson.write(nothingMeasured), sheetId)
                .update();
    }

    @Override
    @Transactional
    public void keep(
            long sheetId,
            SheetCorrection correction,
            AssessedSheet.Read sheet,
            String pagePicture,
            String screenPicture,
            String resultJson) {
        copyFirstReading(sheetId);
        insert(sheetId, correction);
        sheets.keep(sheetId, sheet, pagePicture, screenPicture, resultJson);
        sheets.setChecked(sheetId, false);
    }

    private void copyFirstReading(long sheetId) {
        database.sql(
                        """
                        insert into sheet_first_readings
                            (sheet_id, page_picture, screen_picture, warnings, assessment, result_json)
                        select id, page_picture, screen_picture, warnings, assessment, result_json from sheets
                        where id = ? and not exists (select 1 from sheet_first_readings where sheet_id = ?)""")
                .params(sheetId, sheetId)
                .update();
    }

    private void insert(long sheetId, SheetCorrection correction) {
        database.sql(
                        """
                        insert into sheet_corrections (sheet_id, measured_key, places, corrected_by, corrected_at)
                        values (?, ?, ?, ?, ?)""")
                .params(
                        sheetId,
                        correction.key().orElse(null),
                        places(correction.places()),
                        correction.correctedBy(),
                        Rows.timestamp(correction.correctedAt()))
                .update();
    }

    @Override
    @Transactional
    public void restore(long sheetId, SheetCorrection takenBack) {
        insert(sheetId, takenBack);
        if (asRead(sheetId).flatMap(AsRead::refused).isPresent()) {
            refuseAgain(sheetId);
            return;
        }
        database.sql(
                        """
                        update sheets set
                            (page_picture, screen_picture, warnings, warned, assessment, result_json) =
                            (select f.page_picture, f.screen_picture, f.warnings, f.warnings <> '', f.assessment, f.result_json
                             from sheet_first_readings f where f.sheet_id = sheets.id)
                        where id = ? and exists (select 1 from sheet_first_readings where sheet_id = ?)""")
                .params(sheetId, sheetId)
                .update();
        database.sql("delete from sheet_first_readings where sheet_id = ?").param(sheetId).update();
        sheets.markAsKept(sheetId);
        sheets.setChecked(sheetId, false);
    }

    /** The first reading stays, so that the ticks can be shown once more. */
    private void refuseAgain(long sheetId) {
        database.sql(
                        """
                        update sheets set
                            (reason, result_json) =
                            (select f.refused, f.result_json from sheet_first_readings f where f.sheet_id = sheets.id),
                            state = ?, warnings = '', warned = false, page_picture = null, screen_picture = null, assessment = null,
                            awarded = 0, available = 0, undecided = 0, page_width_mm = null, page_height_mm = null,
                            page_pixels_per_mm = null, checked_at = null
                        where id = ?""")
                .params(SheetState.UNREADABLE.word(), sheetId)
                .update();
        database.sql("delete from marks where sheet_id = ?").param(sheetId).update();
    }

    private static SheetCorrection correction(ResultSet row) throws SQLException {
        return new SheetCorrection(
                Rows.optionalText(row, "measured_key"),
                places(row.getString("places")),
                row.getString("corrected_by"),
                Rows.instant(row, "corrected_at"));
    }

    private static String places(List<Segment> places) {
        return places.stream()
                .map(piece -> DoubleStream.of(
                                piece.start().x(), piece.start().y(), piece.end().x(), piece.end().y())
                        .mapToObj(JdbcSheetCorrections::thousandth)
                        .collect(Collectors.joining(" ")))
                .collect(Collectors.joining(";"));
    }

    /** A micrometre is finer than any line is drawn. */
    private static String thousandth(double value) {
        return Double.toString(Math.round(value * 1000) / 1000.0);
    }

    private static List<Segment> places(String text) {
        List<Segment> places = new ArrayList<>();
        for (String piece : text.isEmpty() ? new String[0] : text.split(";")) {
            String[] numbers = piece.split(" ");
            places.add(Segment.between(
                    Double.parseDouble(numbers[0]),
                    Double.parseDouble(numbers[1]),
                    Double.parseDouble(numbers[2]),
                    Double.parseDouble(numbers[3])));
        }
        return places;
    }
}
