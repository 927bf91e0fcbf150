package wallplate.web.access;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Role;
import wallplate.classes.Classes;
import wallplate.classes.ListedLearner;
import wallplate.classes.SchoolYear;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.moderation.Moderation;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.Learner;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** Makes departments whose people and records are told apart by a number. */
@TestComponent
class Departments {

    private static final AtomicInteger NUMBER = new AtomicInteger(700);

    private final Accounts accounts;
    private final Belongings belongings;
    private final DecidedSets decided;
    private final Tasks tasks;
    private final Classes classes;
    private final ClassSets classSets;
    private final Sheets sheets;
    private final MarkSheets markSheets;
    private final JdbcClient database;

    Departments(
            Accounts accounts,
            Belongings belongings,
            DecidedSets decided,
            Tasks tasks,
            Classes classes,
            ClassSets classSets,
            Sheets sheets,
            MarkSheets markSheets,
            JdbcClient database) {
        this.accounts = accounts;
        this.belongings = belongings;
        this.decided = decided;
        this.tasks = tasks;
        this.classes = classes;
        this.classSets = classSets;
        this.sheets = sheets;
        this.markSheets = markSheets;
        this.database = database;
    }

    Department make() {
        int number = NUMBER.incrementAndGet();
        Account keller = account("M. Keller " + number, Role.TEACHER);
        Account second = account("Second " + number, Role.MODERATOR);
        KeptTask task = tasks.add(DrawnSheets.aTask());
        belongings.give(Kind.TASK, task.id(), keller.id());
        ClassSet set = aSet(task, number);
        belongings.give(Kind.CLASS_SET, set.id(), keller.id());
        Moderation sample = decided.drawn(set, 3);
        belongings.giveSample(sample.id(), second.id());
        Map<Kind, String> records = recordsOf(set, task);
        records.put(Kind.MODERATION, Long.toString(sample.id()));
        long schoolClass = classes.add("11B-" + number, new SchoolYear("2026/27")).orElseThrow().id();
        classes.enrol(schoolClass, List.of(new ListedLearner(1, "Ada " + number, "")));
        belongings.give(Kind.CLASS, schoolClass, keller.id());
        records.put(Kind.CLASS, Long.toString(schoolClass));
        records.put(Kind.MARK_SHEET, Long.toString(aMarkSheet(set, keller)));
        return new Department(
                number,
                keller,
                account("A. Brandt " + number, Role.TEACHER),
                account("Head " + number, Role.HEAD),
                second,
                account("Other second " + number, Role.MODERATOR),
                account("Administrator " + number, Role.ADMINISTRATOR),
                task,
                set,
                sample,
                records);
    }

    Account account(String name, Role role) {
        return accounts.add(name, EnumSet.of(role)).orElseThrow();
    }

    long aMarkSheet(ClassSet set, Account owner) {
        long markSheet = markSheets.add(new NewMarkSheet(
                set.classId(),
                "Term",
                "11B",
                "2026/27",
                "Term 1",
                0,
                List.of(new NewMarkSheet.Task(set.id(), "Eaves", BigDecimal.ONE)),
                owner.name()));
        belongings.give(Kind.MARK_SHEET, markSheet, owner.id());
        return markSheet;
    }

    /** Pictures of its own, so that no other set has a sheet with them. */
    ClassSet aSet(KeptTask task, int seed) {
        ClassSet made = decided.aSet(task, 3, seed);
        database.sql("update sheets set page_picture = ?, screen_picture = ? where class_set_id = ?")
                .params(picture(made), picture(made), made.id())
                .update();
        return classSets.find(made.id()).orElseThrow();
    }

    /** An invented set that nobody has, with a task of its own. */
    Map<Kind, String> demonstration(int seed) {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        ClassSet invented = aSet(task, seed);
        database.sql("update class_sets set demonstration = true where id = ?").param(invented.id()).update();
        return recordsOf(invented, task);
    }

    private Map<Kind, String> recordsOf(ClassSet made, KeptTask with) {
        Learner learner = classSets.learners(made.classId()).get(0);
        SheetEntry sheet = sheets.of(made.id()).get(0);
        Map<Kind, String> ids = new LinkedHashMap<>();
        ids.put(Kind.TASK, Long.toString(with.id()));
        ids.put(Kind.CLASS, Long.toString(made.classId()));
        ids.put(Kind.CLASS_SET, Long.toString(made.id()));
        ids.put(Kind.LEARNER, Long.toString(learner.id()));
        ids.put(Kind.WHOLE_LEARNER, Long.toString(learner.id()));
        ids.put(Kind.SHEET, Long.toString(sheet.id()));
        ids.put(Kind.PICTURE, picture(made));
        return ids;
    }

    private static String picture(ClassSet made) {
        return "%064x".formatted(0xabc000 + made.id());
    }
}
