package wallplate.records.jdbc;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.MarkedSheet;
import wallplate.records.CriterionEntry;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.MarkPlace;
import wallplate.records.Progress;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.sheet.SheetCode;

@Repository
class JdbcSheets implements Sheets {

    private static final int LONGEST_REASON = 2000;
    private static final int LONGEST_WARNINGS = 4000;

    private static final String WITHOUT_PLACES =
            " from sheets where class_set_id = ? and page_width_mm is null and assessment is not null";

    private final JdbcClient database;
    private final Clock clock;
    private final SheetRows rows;
    private final MarkRows marks;
    private final SheetLearners learners;

    JdbcSheets(JdbcClient database, Clock clock, SheetRows rows, MarkRows marks, SheetLearners learners) {
        this.database = database;
        this.clock = clock;
        this.rows = rows;
        this.marks = marks;
        this.learners = learners;
    }

    @Override
    public List<SheetEntry> of(long classSetId) {
        return rows.of(classSetId);
    }

    @Override
    public Optional<SheetEntry> find(long id) {
        return rows.find(id);
    }

    @Override
    public Progress progress(long classSetId) {
        return rows.progress(classSetId);
    }

    @Override
    public Map<Long, Progress> progress(Collection<Long> classSetIds) {
        return rows.progress(classSetIds);
    }

    @Override
    public Map<Long, Progress> progressOfAll() {
        return rows.progressOfAll();
    }

    @Override
    public List<Instant> lastFinished(long classSetId, int most) {
        return rows.lastFinished(classSetId, most);
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
        learners.match(classSetId);
        return find(id).orElseThrow();
    }

    @Override
    public boolean isPictureRemoved(long id) {
        return database.sql("select count(*) from sheets where id = ? and pictures_removed_at is not null")
                        .param(id)
                        .query(Integer.class)
                        .single()
                > 0;
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
        KeptAssessment kept = KeptAssessment.of(sheet);
        database.sql(
                        """
                        update sheets set state = ?, reason = null, attempts = 0, warnings = ?, warned = ?, page_picture = ?,
                            screen_picture = ?, assessment = ?, result_json = ?, assessed_at = ? where id = ?""")
                .params(
                        SheetState.READ.word(),
                        Rows.cut(String.join("\n", sheet.levelPage().warnings()), LONGEST_WARNINGS),
                        !sheet.levelPage().warnings().isEmpty(),
                        pagePicture,
                        screenPicture,
                        AssessmentJson.write(kept),
                        resultJson,
                        Rows.timestamp(clock.instant()),
                        id)
                .update();
        marks.replace(id, kept);
        addUp(id);
        sheet.levelPage().code().ifPresent(code -> learners.read(id, code));
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
    @Transactional
    public void keepCode(long id, SheetCode code) {
        learners.read(id, code);
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
        marks.replace(id, again);
        addUp(id);
    }

    @Override
    public List<CriterionEntry> criteria(long classSetId) {
        return marks.criteria(classSetId);
    }

    @Override
    public List<MarkEntry> marksOfSet(long classSetId, String criterion) {
        return marks.ofSet(classSetId, criterion);
    }

    @Override
    public List<MarkPlace> places(long classSetId, String criterion) {
        return marks.places(classSetId, criterion);
    }

    @Override
    public int withoutPlaces(long classSetId) {
        return database.sql("select count(*)" + WITHOUT_PLACES).param(classSetId).query(Integer.class).single();
    }

    @Override
    @Transactional
    public void keepPlaces(long classSetId) {
        database.sql("select id" + WITHOUT_PLACES)
                .param(classSetId)
                .query(Long.class)
                .list()
                .forEach(id -> marks.keepPlaces(id, assessment(id).orElseThrow()));
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
        marks.replace(id, assessment(id).orElseThrow());
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
        learners.give(Map.of(id, learnerId));
    }

    @Override
    @Transactional
    public void giveTo(Map<Long, Optional<Long>> learnerBySheet) {
        learners.give(learnerBySheet);
    }

    @Override
    @Transactional
    public void match(long classSetId) {
        learners.match(classSetId);
    }
}
