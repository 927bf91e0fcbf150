package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.MarkedSheet;
import wallplate.records.KeptAssessment;
import wallplate.records.Learner;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;

@Repository
class JdbcSheets implements Sheets {

    private static final int LONGEST_REASON = 2000;
    private static final int LONGEST_WARNINGS = 4000;

    private final JdbcClient database;
    private final Clock clock;
    private final MarkRows marks;

    JdbcSheets(JdbcClient database, Clock clock, MarkRows marks) {
        this.database = database;
        this.clock = clock;
        this.marks = marks;
    }

    @Override
    public List<SheetEntry> of(long classSetId) {
        return database.sql(
                        """
                        select s.id, s.class_set_id, s.page, s.state, s.reason, s.awarded, s.available, s.undecided,
                               s.warnings, s.page_picture, s.screen_picture, s.assessed_at, s.checked_at, f.file_name,
                               l.id as learner_id, l.position as learner_position, l.name as learner_name,
                               l.candidate_number
                        from sheets s
                        join scan_files f on f.id = s.scan_file_id
                        left join learners l on l.id = s.learner_id
                        where s.class_set_id = ?
                        order by f.position, s.page""")
                .param(classSetId)
                .query((row, number) -> sheet(row, number + 1))
                .list();
    }

    @Override
    public Optional<SheetEntry> find(long id) {
        return database.sql("select class_set_id from sheets where id = ?")
                .param(id)
                .query(Long.class)
                .optional()
                .flatMap(classSetId ->
                        of(classSetId).stream().filter(sheet -> sheet.id() == id).findFirst());
    }

    @Override
    @Transactional
    public SheetEntry page(long scanFileId, int page) {
        Optional<Long> present = database.sql("select id from sheets where scan_file_id = ? and page = ?")
                .params(scanFileId, page)
                .query(Long.class)
                .optional();
        if (present.isPresent()) {
            return find(present.get()).orElseThrow();
        }
        long classSetId = database.sql("select class_set_id from scan_files where id = ?")
                .param(scanFileId)
                .query(Long.class)
                .single();
        long id = Rows.insert(database.sql("insert into sheets (class_set_id, scan_file_id, page, state) values (?, ?, ?, ?)")
                .params(classSetId, scanFileId, page, SheetState.WAITING.word()));
        matchInOrder(classSetId);
        return find(id).orElseThrow();
    }

    @Override
    @Transactional
    public int beginReading(long id) {
        database.sql("update sheets set state = ?, attempts = attempts + 1 where id = ?")
                .params(SheetState.READING.word(), id)
                .update();
        return database.sql("select attempts from sheets where id = ?")
                .param(id)
                .query(Integer.class)
                .single();
    }

    @Override
    @Transactional
    public void keep(long id, AssessedSheet.Read sheet, String pagePicture, String screenPicture, String resultJson) {
        database.sql(
                        """
                        update sheets set state = ?, reason = null, attempts = 0, warnings = ?, page_picture = ?,
                            screen_picture = ?, assessment = ?, result_json = ?, assessed_at = ? where id = ?""")
                .params(
                        SheetState.READ.word(),
                        Rows.cut(String.join("\n", sheet.levelPage().warnings()), LONGEST_WARNINGS),
                        pagePicture,
                        screenPicture,
                        AssessmentJson.write(KeptAssessment.of(sheet)),
                        resultJson,
                        Rows.timestamp(clock.instant()),
                        id)
                .update();
        marks.replace(id, sheet.marked());
        addUp(id);
    }

    @Override
    public void refuse(long id, String reason, String resultJson) {
        database.sql("update sheets set state = ?, reason = ?, attempts = 0, result_json = ?, assessed_at = ? where id = ?")
                .params(
                        SheetState.UNREADABLE.word(),
                        Rows.cut(reason, LONGEST_REASON),
                        resultJson,
                        Rows.timestamp(clock.instant()),
                        id)
                .update();
    }

    @Override
    public void fail(long id, String reason) {
        database.sql("update sheets set state = ?, reason = ?, assessed_at = ? where id = ?")
                .params(
                        SheetState.FAILED.word(),
                        Rows.cut(reason, LONGEST_REASON),
                        Rows.timestamp(clock.instant()),
                        id)
                .update();
    }

    @Override
    public Optional<KeptAssessment> assessment(long id) {
        return database.sql("select assessment from sheets where id = ? and assessment is not null")
                .param(id)
                .query(String.class)
                .optional()
                .map(AssessmentJson::read);
    }

    @Override
    public Optional<String> resultJson(long id) {
        return database.sql("select result_json from sheets where id = ? and result_json is not null")
                .param(id)
                .query(String.class)
                .optional();
    }

    @Override
    public List<MarkEntry> marks(long id) {
        return marks.ofSheet(id);
    }

    @Override
    public List<MarkEntry> marksOfSet(long classSetId) {
        return marks.ofSet(classSetId);
    }

    @Override
    @Transactional
    public void markAgain(long id, MarkedSheet marked) {
        KeptAssessment kept = assessment(id).orElseThrow();
        KeptAssessment again = new KeptAssessment(kept.page(), kept.measured(), marked);
        database.sql("update sheets set assessment = ? where id = ?")
                .params(AssessmentJson.write(again), id)
                .update();
        marks.replace(id, marked);
        addUp(id);
    }

    @Override
    public List<MarkChange> changes(long id) {
        return marks.changes(id);
    }

    @Override
    @Transactional
    public void change(long id, MarkChange change) {
        marks.change(id, change);
        addUp(id);
    }

    /** Gives a sheet the marks of the assessment that is kept of it; what a person changed stays. */
    public void markAsKept(long id) {
        marks.replace(id, assessment(id).orElseThrow().marked());
        addUp(id);
    }

    /** Brings the sheet's own totals up to its marks as they stand. */
    private void addUp(long id) {
        MarkedSheet standing = assessment(id).orElseThrow().markedAs(marks.ofSheet(id));
        database.sql("update sheets set awarded = ?, available = ?, undecided = ? where id = ?")
                .params(standing.awarded(), standing.available(), standing.undecided(), id)
                .update();
    }

    @Override
    public void setChecked(long id, boolean checked) {
        database.sql("update sheets set checked_at = ? where id = ?")
                .params(checked ? Rows.timestamp(clock.instant()) : null, id)
                .update();
    }

    @Override
    @Transactional
    public void giveTo(long id, Optional<Long> learnerId) {
        learnerId.ifPresent(learner -> database.sql(
                        """
                        update sheets set learner_id = null, learner_set_by_hand = true
                        where learner_id = ? and id <> ?
                          and class_set_id = (select class_set_id from sheets where id = ?)""")
                .params(learner, id, id)
                .update());
        database.sql("update sheets set learner_id = ?, learner_set_by_hand = true where id = ?")
                .params(learnerId.orElse(null), id)
                .update();
    }

    @Override
    @Transactional
    public void matchInOrder(long classSetId) {
        List<Long> free = new ArrayList<>(database.sql(
                        """
                        select l.id from learners l join class_sets c on c.class_id = l.class_id
                        where c.id = ? and not exists (
                            select 1 from sheets s
                            where s.class_set_id = c.id and s.learner_id = l.id and s.learner_set_by_hand)
                        order by l.position""")
                .param(classSetId)
                .query(Long.class)
                .list());
        List<Long> unplaced = database.sql(
                        """
                        select s.id from sheets s join scan_files f on f.id = s.scan_file_id
                        where s.class_set_id = ? and not s.learner_set_by_hand order by f.position, s.page""")
                .param(classSetId)
                .query(Long.class)
                .list();
        for (int index = 0; index < unplaced.size(); index++) {
            database.sql("update sheets set learner_id = ? where id = ?")
                    .params(index < free.size() ? free.get(index) : null, unplaced.get(index))
                    .update();
        }
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
                Rows.optionalText(row, "screen_picture"));
    }

    private static Optional<Learner> learner(ResultSet row) throws SQLException {
        long id = row.getLong("learner_id");
        if (row.wasNull()) {
            return Optional.empty();
        }
        return Optional.of(new Learner(
                id,
                row.getInt("learner_position"),
                row.getString("learner_name"),
                Rows.optionalText(row, "candidate_number").orElse("")));
    }
}
