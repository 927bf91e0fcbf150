package wallplate.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;
import wallplate.accounts.OneTimeLinks;
import wallplate.accounts.Role;
import wallplate.analysis.FollowUpGroup;
import wallplate.assessment.AssessedSheet;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.KeptAssessment;
import wallplate.records.KeptTask;
import wallplate.records.ScanStore;
import wallplate.records.SelfChecks;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.report.PagePicture;
import wallplate.solver.FollowUpTask;
import wallplate.web.DrawnSheets;
import wallplate.web.KeptSheets;

/**
 * A province's records, all invented: 10,000 learners in 250 classes, 2,000 class sets and 400,000 marked criteria, with mark
 * sheets, moderations, accounts and an audit trail of the size that belongs to them.
 *
 * <p>Sheets are copies of a few that were drawn and marked by the program, whole with their assessments, so that a query that reads too
 * much pays for it. One set has a whole class of 40.
 */
@TestComponent
@Import(KeptSheets.class)
class ProvinceData {

    static final int CLASSES = 250;
    static final int CLASS_SIZE = 40;
    static final int SETS = 2_000;
    static final int MARKS = 400_000;
    private static final int TASKS = 60;
    private static final int DIFFERENT = 20;
    private static final int TERMS = 2;
    private static final int COLUMNS = 4;
    private static final int MODERATIONS = 200;
    private static final int ACCOUNTS = 300;
    private static final int AUDIT_ENTRIES = 100_000;
    private static final long NUMBERS = 100_000;
    /** Below it are the ids that the database itself gives. */
    static final long FIRST_ID = 1_000_000;

    private final Tasks tasks;
    private final ClassSets classSets;
    private final KeptSheets sheetsOfSet;
    private final Sheets sheets;
    private final ScanStore store;
    private final FeedbackCodes codes;
    private final OneTimeLinks links;
    private final SelfChecks checks;
    private final JdbcTemplate database;

    ProvinceData(
            Tasks tasks,
            ClassSets classSets,
            KeptSheets sheetsOfSet,
            Sheets sheets,
            ScanStore store,
            FeedbackCodes codes,
            OneTimeLinks links,
            SelfChecks checks,
            JdbcTemplate database) {
        this.tasks = tasks;
        this.classSets = classSets;
        this.sheetsOfSet = sheetsOfSet;
        this.sheets = sheets;
        this.store = store;
        this.codes = codes;
        this.links = links;
        this.checks = checks;
        this.database = database;
    }

    /**
     * What the pages are asked for with.
     *
     * @param learner of the whole class, with a sheet in every set of the class
     * @param code opens the feedback of one sheet
     */
    record Places(
            long taskId,
            String learnerCode,
            long setId,
            long sheetId,
            String criterion,
            String picture,
            long classId,
            long learner,
            long draft,
            long submitted,
            long moderation,
            String code,
            String schoolYear,
            String term,
            long account,
            String passwordLink,
            String practised,
            String checkToken) {}

    Places fill() throws IOException {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        ClassSet template = template(task);
        numbers();
        tasks();
        classesAndLearners(template);
        sets(template, task);
        int perSet = sheetsPerSet(template);
        sheets(template, perSet);
        markSheets();
        moderations();
        audit();
        accounts();
        owners();
        database.execute("analyze");
        long set = FIRST_ID + CLASSES;
        long sheet = database.queryForObject(
                "select max(id) - 20 from sheets where class_set_id = ?", Long.class, set);
        String code = codes.make(set).get(sheet);
        return new Places(
                task.id(),
                task.learnerCode(),
                set,
                sheet,
                sheets.criteria(set).get(3).id(),
                sheets.find(sheet).orElseThrow().pagePicture().orElseThrow(),
                FIRST_ID,
                FIRST_ID + 20,
                draft(),
                FIRST_ID,
                FIRST_ID,
                code,
                "2026/27",
                "Term 1",
                FIRST_ID + 1,
                links.make(FIRST_ID + 1),
                practised(set),
                checked(task));
    }

    private ClassSet template(KeptTask task) {
        ClassSet set = classSets.add("Drawn by the program", "none", List.of(), task, false);
        for (int seed = 1; seed <= DIFFERENT; seed++) {
            AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "sheet.png", seed);
            sheetsOfSet.read(set, seed + ".png", drawn);
        }
        return set;
    }

    private String kept(byte[] png) throws IOException {
        return store.put(new ByteArrayInputStream(png)).name();
    }

    private void accounts() {
        database.update(
                """
                insert into accounts (id, name, name_key, password_hash, created_at)
                select ? + n, concat('Teacher ', n), concat('teacher ', n), 'none', t.created_at
                from numbers join drawing_tasks t on t.id = ? where n < ?""",
                FIRST_ID, FIRST_ID, ACCOUNTS);
        for (Role role : Role.values()) {
            database.update(
                    "insert into account_roles (account_id, role) select id, ? from accounts where id = ? or id > ? and ? = 'teacher'",
                    role.word(), FIRST_ID, FIRST_ID, role.word());
        }
    }

    /** Classes and what belongs to them shared out among the teachers; what is measured belongs to whoever signs in. */
    private void owners() {
        database.update("update school_classes set owner_id = ? + mod(id, ?) where id >= ?", FIRST_ID, ACCOUNTS, FIRST_ID);
        database.update("update school_classes set owner_id = ? where id = ?", FIRST_ID, FIRST_ID);
        for (String table : List.of("class_sets", "mark_sheets")) {
            database.update("update " + table + " set owner_id = (select c.owner_id from school_classes c where c.id = class_id)");
        }
        database.update("update drawing_tasks set owner_id = ?", FIRST_ID);
        database.update("update moderations set moderator_id = ? where id = ?", FIRST_ID, FIRST_ID);
    }

    /** Has the exercise of the largest group made, and says for which part. */
    private String practised(long set) {
        ClassSet classSet = classSets.find(set).orElseThrow();
        String part = FollowUpGroup.of(sheets.of(set), sheets.marksOfSet(set)).get(0).part();
        KeptTask exercise = tasks.add(FollowUpTask.of(classSet.task(), part, part).orElseThrow());
        classSets.addFor(classSet.classId(), exercise.task().title(), exercise);
        return part;
    }

    /** A learner's photograph that was read. */
    private String checked(KeptTask task) throws IOException {
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "photograph", 1);
        String picture = kept(PagePicture.forScreen(drawn.levelPage().ink()));
        SelfChecks.Added added = checks.add(task.id(), "en", Map.of(), picture);
        checks.keep(added.id(), KeptAssessment.of(drawn), picture);
        return added.token();
    }

    private void numbers() {
        database.execute("create table numbers (n bigint primary key)");
        List<Object[]> all = new ArrayList<>();
        LongStream.range(0, NUMBERS).forEach(number -> all.add(new Object[] {number}));
        database.batchUpdate("insert into numbers (n) values (?)", all);
    }

    private void tasks() {
        database.update(
                """
                insert into drawing_tasks (id, slug, title, detail, yaml, learner_code, created_at, changed_at)
                select ? + n, concat('task-', n), concat('Section ', n), detail, concat(yaml, '# ', n), concat('C', n), created_at, changed_at
                from numbers, drawing_tasks t where n < ? and t.slug = ?""",
                FIRST_ID, TASKS, DrawnSheets.aTask().id());
    }

    private void classesAndLearners(ClassSet template) {
        database.update(
                """
                insert into school_classes (id, name, school_year, created_at)
                select ? + n, concat('Class ', n), case when mod(n, 2) = 0 then '2026/27' else '2025/26' end, ?
                from numbers where n < ?""",
                FIRST_ID, template.createdAt().atOffset(java.time.ZoneOffset.UTC), CLASSES);
        database.update(
                """
                insert into learners (id, class_id, position, name, candidate_number, person_id, joined_at)
                select ? + c.n * ? + p.n, ? + c.n, p.n + 1, concat('Learner ', c.n, '-', p.n), concat('K', c.n * ? + p.n),
                       ? + c.n * ? + p.n, ?
                from numbers c, numbers p where c.n < ? and p.n < ?""",
                FIRST_ID, CLASS_SIZE, FIRST_ID, CLASS_SIZE, FIRST_ID, CLASS_SIZE,
                template.createdAt().atOffset(java.time.ZoneOffset.UTC), CLASSES, CLASS_SIZE);
    }

    private void sets(ClassSet template, KeptTask task) {
        database.update(
                """
                insert into class_sets (id, title, class_id, task_id, task_yaml, created_at, released_at)
                select ? + n, concat('Set ', n), ? + mod(n, ?), ? + mod(n, ?), concat(?, '# set ', n), ?, case when mod(n, 7) <> 0 then cast(? as timestamp with time zone) end
                from numbers where n < ?""",
                FIRST_ID, FIRST_ID, CLASSES, FIRST_ID, TASKS, task.yaml(),
                template.createdAt().atOffset(java.time.ZoneOffset.UTC),
                template.createdAt().atOffset(java.time.ZoneOffset.UTC), SETS);
    }

    private int sheetsPerSet(ClassSet template) {
        int marks = sheets.marksOfSet(template.id()).size() / DIFFERENT;
        return (MARKS + SETS * marks - 1) / (SETS * marks);
    }

    /** The sheets of a set belong to the learners from the 21st on, in the set of a whole class to all of them. */
    private void sheets(ClassSet template, int perSet) {
        long whole = FIRST_ID + CLASSES;
        long firstTemplate = database.queryForObject(
                "select min(id) from sheets where class_set_id = ?", Long.class, template.id());
        database.update(
                """
                insert into scan_files (id, class_set_id, position, file_name, content_hash, size_bytes, state, received_at)
                select ? + s.n * ? + k.n, ? + s.n, k.n + 1, concat('scan-', k.n, '.png'), lpad(cast(100000 + s.n * 100 + k.n as varchar), 64, '0'), 9, 'done', ?
                from numbers s, numbers k where s.n < ? and k.n < case when ? + s.n = ? then ? else ? end""",
                FIRST_ID, CLASS_SIZE, FIRST_ID, template.createdAt().atOffset(java.time.ZoneOffset.UTC), SETS, FIRST_ID, whole, CLASS_SIZE, perSet);
        // Else the planner takes the filled tables for the empty ones that they were a moment ago.
        database.execute("analyze");
        database.update(
                """
                insert into sheets (id, class_set_id, scan_file_id, page, learner_id, matched_by, state, awarded, available, undecided,
                    warnings, page_picture, screen_picture, assessment, result_json, assessed_at, checked_at, page_width_mm,
                    page_height_mm, page_pixels_per_mm)
                select f.id, f.class_set_id, f.id, 1,
                       ? + mod(f.class_set_id - ?, ?) * ? + mod(f.position + 19, ?),
                       'code', t.state, t.awarded, t.available, case when mod(f.id, 9) = 0 then t.undecided else 0 end, '',
                       t.page_picture, t.screen_picture, t.assessment, t.result_json, t.assessed_at,
                       case when mod(f.id, 9) <> 0 then t.assessed_at end, t.page_width_mm, t.page_height_mm, t.page_pixels_per_mm
                from scan_files f join sheets t on t.id = ? + mod(f.id, ?) where f.id >= ?""",
                FIRST_ID, FIRST_ID, CLASSES, CLASS_SIZE, CLASS_SIZE, firstTemplate, DIFFERENT, FIRST_ID);
        database.execute("analyze");
        database.update(
                """
                insert into marks (sheet_id, criterion, position, title, measured_key, verdict, awarded, available, tolerance, unit,
                    expected, expected_rounded, expected_word, finding, measured, uncertainty, measured_word, uncertain_reason, slips,
                    feedback, evidence)
                select s.id, criterion, position, title, measured_key, case when mod(s.id, 9) = 0 or verdict <> 'undecided' then verdict else 'met' end,
                    m.awarded, m.available, tolerance, unit, expected, expected_rounded, expected_word, finding, measured, uncertainty,
                    measured_word, uncertain_reason, slips, feedback, evidence
                from sheets s join marks m on m.sheet_id = ? + mod(s.id, ?) where s.id >= ?""",
                firstTemplate, DIFFERENT, FIRST_ID);
        database.execute("analyze");
        database.update(
                """
                insert into mark_changes (sheet_id, criterion, verdict, awarded, reason, changed_by, changed_at)
                select s.id, m.criterion, 'met', m.available, 'seen on paper', 'teacher', s.assessed_at
                from sheets s join marks m on m.sheet_id = s.id and m.position = 2 where mod(s.id, 5) = 0 and s.id >= ?""",
                FIRST_ID);
    }

    private void markSheets() {
        database.update(
                """
                insert into mark_sheets (id, class_id, title, class_name, school_year, term, created_by, created_at, submitted_by, submitted_at)
                select ? + c.id - ? + t.n * ?, c.id, concat(c.name, ', Term ', t.n + 1), c.name, c.school_year, concat('Term ', t.n + 1),
                       'teacher', c.created_at, 'teacher', c.created_at
                from school_classes c, numbers t where c.id >= ? and t.n < ?""",
                FIRST_ID, FIRST_ID, CLASSES, FIRST_ID, TERMS);
        database.update(
                """
                insert into mark_sheet_columns (mark_sheet_id, place, class_set_id, title, weight)
                select m.id, p.n + 1, m.class_id + ? * p.n, concat('Section ', p.n + 1), 1 from mark_sheets m, numbers p where p.n < ?""",
                CLASSES, COLUMNS);
        database.update(
                """
                insert into mark_sheet_lines (mark_sheet_id, line, learner_id, name, candidate_number)
                select m.id, l.position, l.id, l.name, l.candidate_number from mark_sheets m join learners l on l.class_id = m.class_id""");
        database.update(
                """
                insert into mark_sheet_entries (mark_sheet_id, line, place, standing, awarded, available)
                select l.mark_sheet_id, l.line, p.n + 1, 'marked', 20 + mod(l.line * 7 + p.n, 13), 33
                from mark_sheet_lines l, numbers p where p.n < ?""",
                COLUMNS);
    }

    private long draft() {
        long id = FIRST_ID + CLASSES * TERMS;
        database.update(
                """
                insert into mark_sheets (id, class_id, title, class_name, school_year, term, created_by, created_at)
                select ?, id, 'A draft', name, school_year, 'Term 3', 'teacher', created_at from school_classes where id = ?""",
                id, FIRST_ID);
        database.update(
                """
                insert into mark_sheet_columns (mark_sheet_id, place, class_set_id, title, weight)
                select ?, n + 1, ? + ? * n, concat('Section ', n + 1), 1 from numbers where n < ?""",
                id, FIRST_ID, CLASSES, COLUMNS);
        return id;
    }

    /** Of the first sets: every sheet of the set of a whole class, marked a second time and handed in. */
    private void moderations() {
        database.update(
                """
                insert into moderations (id, class_set_id, choice, size_percent, chance_seed, candidates, left_out, moderator, drawn_by, drawn_at, handed_in_at)
                select ? + n, case when n = 0 then ? else ? + n end, 'at-random', 100, n, 6, 0, 'M. Two', 'teacher', s.created_at, s.created_at
                from numbers join class_sets s on s.id = ? where n < ?""",
                FIRST_ID, FIRST_ID + CLASSES, FIRST_ID, FIRST_ID, MODERATIONS);
        database.update(
                """
                insert into moderation_sheets (moderation_id, place, sheet_id, first_total, available, second_total, marked_at)
                select m.id, f.position, s.id, s.awarded, s.available, s.awarded - mod(f.position, 3), s.assessed_at
                from moderations m join sheets s on s.class_set_id = m.class_set_id join scan_files f on f.id = s.scan_file_id""");
        database.update(
                """
                insert into moderation_first_marks (moderation_id, place, criterion, position, title, available, awarded)
                select m.moderation_id, m.place, k.criterion, k.position, k.title, k.available, k.awarded
                from moderation_sheets m join marks k on k.sheet_id = m.sheet_id""");
        database.update(
                """
                insert into moderation_second_marks (moderation_id, place, criterion, awarded)
                select moderation_id, place, criterion, case when mod(place + position, 7) = 0 then 0 else awarded end from moderation_first_marks""");
    }

    private void audit() {
        database.update(
                """
                insert into audit_entries (number, done_at, person, act, subject, previous_hash, hash)
                select n + 1, s.created_at, concat('teacher ', mod(n, 97)), 'POST /sheets/{id}/checked', concat('/sheets/', n, '/checked'),
                       lpad(cast(n as varchar), 64, '0'), lpad(cast(n + 1 as varchar), 64, '0')
                from numbers join class_sets s on s.id = ? where n < ?""",
                FIRST_ID, AUDIT_ENTRIES);
        database.update(
                "update audit_head set number = ?, hash = lpad(?, 64, '0')", AUDIT_ENTRIES, Integer.toString(AUDIT_ENTRIES));
    }
}
