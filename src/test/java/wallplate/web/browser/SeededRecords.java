package wallplate.web.browser;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.context.annotation.Import;
import wallplate.assessment.AssessedSheet;
import wallplate.classes.Classes;
import wallplate.classes.ListedLearner;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.ownership.Share;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;
import wallplate.web.KeptSheets;

/** Class sets with assessed sheets, made without reading a scan, for the pages to show. */
@TestComponent
@Import(KeptSheets.class)
class SeededRecords {

    private static final List<String> NAMES = List.of(
            "Amahle Dube", "Bo Lind", "Cem Aydin", "Dora Klein", "Esi Mensah", "Finn Roche", "Gia Rossi", "Hana Sato");

    private final Tasks tasks;
    private final ClassSets classSets;
    private final ScanFiles files;
    private final Sheets sheets;
    private final KeptSheets kept;
    private final Classes classes;
    private final MarkSheets markSheets;

    SeededRecords(
            Tasks tasks, ClassSets classSets, ScanFiles files, Sheets sheets, KeptSheets kept, Classes classes, MarkSheets markSheets) {
        this.markSheets = markSheets;
        this.classes = classes;
        this.tasks = tasks;
        this.classSets = classSets;
        this.files = files;
        this.sheets = sheets;
        this.kept = kept;
    }

    KeptTask aTask() {
        return tasks.add(DrawnSheets.aTask());
    }

    /** A set of eight sheets: seven read, one refused. */
    ClassSet aClassSet(KeptTask task) {
        List<ClassListEntry> classList =
                NAMES.stream().map(name -> new ClassListEntry(name, "")).toList();
        ClassSet classSet = classSets.add("Eaves of the lookout, 11B", "11B", classList, task, false);
        for (int number = 1; number <= NAMES.size(); number++) {
            ScanFileEntry file = received(classSet, "sheet-%02d.png".formatted(number));
            SheetEntry sheet = sheets.page(file.id(), 1);
            if (number == 6) {
                sheets.refuse(sheet.id(), "The picture is too blurred: lay the sheet flat and hold the camera still.", "{}");
            } else {
                keep(sheet, DrawnSheets.aSheet(task.task(), file.fileName(), number));
            }
            files.begin(file.id());
            files.finish(file.id());
        }
        return classSet;
    }

    /** A class of this school year with the same learners, one of whom has left. */
    SchoolClass aSchoolClass() {
        return classes.all(Share.everything()).stream().findFirst().orElseGet(() -> {
            SchoolClass made = classes.add("11B", new SchoolYear("2026/27")).orElseThrow();
            List<ListedLearner> learners = IntStream.range(0, NAMES.size())
                    .mapToObj(index -> new ListedLearner(index + 1, NAMES.get(index), Integer.toString(1040 + index)))
                    .toList();
            classes.enrol(made.id(), learners);
            classes.leave(classes.enrolments(made.id()).subList(3, 4));
            return made;
        });
    }

    /** A draft of one set's mark sheet. */
    long aMarkSheet(ClassSet set) {
        var task = new NewMarkSheet.Task(set.id(), set.title(), BigDecimal.ONE);
        return markSheets.add(new NewMarkSheet(
                set.classId(), "Term 1, 11B", set.className(), "", "Term 1", 10, List.of(task), "teacher"));
    }

    /** A set of sheets that were assessed elsewhere, a learner each. */
    ClassSet aClassSetOf(KeptTask task, List<AssessedSheet.Read> assessed) {
        List<ClassListEntry> classList = NAMES.stream()
                .limit(assessed.size())
                .map(name -> new ClassListEntry(name, ""))
                .toList();
        ClassSet classSet = classSets.add("Eaves, read from scans", "10B", classList, task, false);
        assessed.forEach(read -> kept.read(classSet, read.scan(), read));
        return classSet;
    }

    /** A file that is there but has not been read. */
    ScanFileEntry received(ClassSet classSet, String name) {
        return kept.received(classSet, name);
    }

    void keep(SheetEntry sheet, AssessedSheet.Read drawn) {
        kept.keep(sheet, drawn);
    }
}
