package wallplate.classes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import wallplate.ownership.Share;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Histories;
import wallplate.records.KeptTask;
import wallplate.records.Learner;
import wallplate.records.LearnerHistory;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.tables.LineFault;
import wallplate.tables.TableFile;
import wallplate.web.DrawnSheets;

/** Class lists and moves on a real database. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:classes;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/classes",
            "wallplate.demonstration.enabled=false"
        })
class ClassListsTest {

    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired
    private Classes classes;

    @Autowired
    private ClassLists lists;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Histories histories;

    private SchoolClass eleventh;
    private SchoolClass twelfth;

    @BeforeEach
    void twoClasses() {
        int number = NUMBER.incrementAndGet();
        eleventh = classes.add("11B-" + number, new SchoolYear("2025/26")).orElseThrow();
        twelfth = classes.add("12B-" + number, new SchoolYear("2026/27")).orElseThrow();
    }

    @Test
    void keepsOneClassOfAName() {
        assertThat(classes.add(eleventh.name(), new SchoolYear("2025/26"))).isEmpty();
        assertThat(classes.add(eleventh.name(), new SchoolYear("2027"))).isPresent();
    }

    @Test
    void takesAListInAndHandsTheSameListOut() throws IOException {
        assertThat(take("number;name\n7;Ada Nkosi\n8;=Bo\n")).isEqualTo(new RollChange.Done(2, 0, 0, List.of(), List.of()));

        for (boolean workbook : new boolean[] {false, true}) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            if (workbook) {
                TableFile.writeXlsx(lists.list(eleventh), out);
            } else {
                TableFile.writeCsv(lists.list(eleventh), out);
            }
            assertThat(lists.take(eleventh, out.toByteArray()))
                    .isEqualTo(new RollChange.Done(0, 0, 2, List.of(), List.of()));
        }
    }

    @Test
    void namesEveryFaultWithItsLineAndThenChangesNothing() {
        RollChange change = take("name,number,house\nAda,1,x\n,2,\nCem,1,\n" + "D".repeat(201) + ",4,\n");

        assertThat(((RollChange.Refused) change).faults()).extracting(LineFault::line).containsExactly(3, 4, 5);
        assertThat(lists.present(eleventh.id())).isEmpty();
    }

    @Test
    void findsLearnersByNumberOrNameAndTakesNobodyOut() {
        take("Ada,1\nBo,2\nCem,\n");

        RollChange change = take("name,number,house\nAda Nkosi,1,red\nCem,3,blue\nDora,4,red\n");

        assertThat(change).isEqualTo(new RollChange.Done(1, 2, 0, List.of("Bo"), List.of("house")));
        assertThat(lists.present(eleventh.id()))
                .extracting(one -> one.position() + " " + one.name() + " " + one.candidateNumber())
                .containsExactly("1 Ada Nkosi 1", "2 Bo 2", "3 Cem 3", "4 Dora 4");
    }

    @Test
    void keepsTheHistoryOfALearnerWhoMoves() {
        take("Ada,1\nBo,2\n");
        ClassSet before = aSet(eleventh);
        SheetEntry sheet = aSheet(before);
        Enrolment ada = lists.present(eleventh.id()).get(0);

        assertThat(lists.move(Set.of(ada.id()), eleventh, twelfth)).isEmpty();
        ClassSet after = aSet(twelfth);
        aSheet(after);

        assertThat(lists.present(eleventh.id())).extracting(Enrolment::name).containsExactly("Bo");
        assertThat(classes.history(ada.id())).extracting(Enrolment::classId).containsExactly(eleventh.id(), twelfth.id());
        assertThat(sheets.find(sheet.id()).orElseThrow().label()).isEqualTo("Ada");
        Enrolment moved = lists.present(twelfth.id()).get(0);
        assertThat(histories.of(moved.id(), Share.everything()).orElseThrow().entries())
                .extracting(entry -> entry.classSet().id())
                .containsExactly(before.id(), after.id());
        assertThat(histories.of(moved.id(), Share.everything()).orElseThrow().matchedBy()).isEqualTo(LearnerHistory.MatchedBy.CLASSES);
    }

    /** A sheet that comes late must not shift the others because someone left the class in between. */
    @Test
    void matchesALateSheetToTheLearnersOfTheTime() {
        take("Ada,1\nBo,2\nCem,3\n");
        ClassSet classSet = aSet(eleventh);
        aSheet(classSet);
        lists.move(Set.of(lists.present(eleventh.id()).get(0).id()), eleventh, twelfth);

        aSheet(classSet);

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("Ada", "Bo");
        assertThat(classSets.learnersOfSet(classSet.id())).extracting(Learner::name).containsExactly("Ada", "Bo", "Cem");
        assertThat(classSets.learners(eleventh.id())).extracting(Learner::name).containsExactly("Bo", "Cem");
    }

    @Test
    void movesNobodyWhereOneCannotMove() {
        take("Ada,1\nBo,2\n");
        lists.take(twelfth, "Eve,2\n".getBytes(StandardCharsets.UTF_8));
        Set<Long> both = lists.present(eleventh.id()).stream().map(Enrolment::id).collect(Collectors.toSet());

        assertThat(lists.move(both, eleventh, twelfth)).hasSize(1).first().asString().contains("Bo", "Eve");
        assertThat(lists.present(eleventh.id())).hasSize(2);
    }

    @Test
    void showsNumbersInsteadOfNamesWhereverASheetIsShown() {
        take("Ada,1041\nBo,\n");
        ClassSet classSet = aSet(eleventh);
        aSheet(classSet);
        assertThat(lists.showNumbers(eleventh, true)).extracting(Enrolment::name).containsExactly("Bo");

        classes.rename(lists.present(eleventh.id()).get(1).id(), "Bo", "1042");
        assertThat(lists.showNumbers(eleventh, true)).isEmpty();

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("1041");
        assertThat(classSets.learners(eleventh.id())).extracting(Learner::name).containsExactly("1041", "1042");
        long first = lists.present(eleventh.id()).get(0).id();
        assertThat(histories.of(first, Share.everything()).orElseThrow().learner().name()).isEqualTo("1041");
        assertThat(lists.take(classes.find(eleventh.id()).orElseThrow(), "Eve".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(RollChange.Refused.class);
    }

    @Test
    void knowsSchoolYears() {
        assertThat(SchoolYear.of(" 2026-2027 ")).contains(new SchoolYear("2026/27"));
        assertThat(SchoolYear.of("2099/00")).contains(new SchoolYear("2099/00"));
        assertThat(SchoolYear.of("2026/28")).isEmpty();
        assertThat(SchoolYear.of("26")).isEmpty();
    }

    private RollChange take(String list) {
        return lists.take(eleventh, list.getBytes(StandardCharsets.UTF_8));
    }

    private ClassSet aSet(SchoolClass schoolClass) {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        return classSets.addFor(schoolClass.id(), "Eaves", task);
    }

    private SheetEntry aSheet(ClassSet classSet) {
        int number = NUMBER.incrementAndGet();
        long file = Optional.of(number)
                .flatMap(one -> files.add(classSet.id(), one + ".png", "%064x".formatted(one), 10))
                .orElseThrow()
                .id();
        return sheets.page(file, 1);
    }
}
