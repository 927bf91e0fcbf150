package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.ownership.Share;
import wallplate.records.Standings.Standing;
import wallplate.records.Standings.Which;
import wallplate.sheet.LevelPage;
import wallplate.web.DrawnSheets;

/** Where class sets stand, held against a count of their sheets one by one. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:standings;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/standings",
            "wallplate.demonstration.enabled=false"
        })
class StandingsTest {

    private static final int MANY = 1000;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private SheetCorrections corrections;

    @Autowired
    private Standings standings;

    @Autowired
    private JdbcClient database;

    private KeptTask task;

    @BeforeEach
    void aTask() {
        database.sql("delete from class_sets").update();
        task = tasks.add(DrawnSheets.aTask());
    }

    @Test
    void tellsWhichSetsAreAtWorkNeedAPersonOrCanBeReleased() {
        ClassSet empty = aSet("Empty");
        ClassSet waiting = aSet("Waiting");
        aSheet(waiting, 1);
        ClassSet reading = aSet("Being read");
        sheets.beginReading(aSheet(reading, 1).id());
        sheets.refuse(aSheet(reading, 2).id(), "no bar", "{}");
        ClassSet warned = aSet("With a warning");
        keep(aSheet(warned, 1), read(1, List.of("The bar is short.")));
        ClassSet undecided = aSet("With an undecided mark");
        keep(aSheet(undecided, 1), read(1, List.of()));
        database.sql("update sheets set undecided = 1 where class_set_id = ?").param(undecided.id()).update();
        ClassSet failed = aSet("Failed");
        sheets.fail(aSheet(failed, 1).id(), "broken");
        ClassSet clean = aSet("Read");
        keep(aSheet(clean, 1), read(1, List.of()));
        ClassSet seen = aSet("Looked at");
        SheetEntry lookedAt = aSheet(seen, 1);
        keep(lookedAt, read(1, List.of("The bar is short.")));
        sheets.setChecked(lookedAt.id(), true);
        ClassSet released = aSet("Released");
        keep(aSheet(released, 1), read(1, List.of()));
        classSets.release(released.id());

        assertThat(found(Which.AT_WORK)).containsExactly(reading.id(), waiting.id());
        assertThat(found(Which.NEEDS_PERSON)).containsExactly(failed.id(), undecided.id(), warned.id(), reading.id());
        assertThat(found(Which.TO_RELEASE)).containsExactly(seen.id(), clean.id());
        assertThat(found(Which.ALL))
                .containsExactly(
                        released.id(), seen.id(), clean.id(), failed.id(), undecided.id(), warned.id(), reading.id(),
                        waiting.id(), empty.id());
        assertThat(all(Which.ALL)).allSatisfy(this::isAsItsSheetsAre);
        assertThat(all(Which.NEEDS_PERSON)).allSatisfy(this::isAsItsSheetsAre);
    }

    /** A reading with a warning is corrected by one without, and the correction is taken back. */
    @Test
    void followsCorrectionsOfTheReading() {
        ClassSet set = aSet("Corrected");
        SheetEntry sheet = aSheet(set, 1);
        keep(sheet, read(1, List.of("The bar is short.")));
        assertThat(found(Which.NEEDS_PERSON)).containsExactly(set.id());

        Segment bar = Segment.between(20, 15, 119, 15);
        corrections.keep(sheet.id(), correction(List.of(bar)), read(2, List.of()), hash(18), hash(19), "{1}");
        everyMarkIsDecided(sheet);
        assertThat(found(Which.NEEDS_PERSON)).isEmpty();

        corrections.restore(sheet.id(), correction(List.of()));
        everyMarkIsDecided(sheet);
        assertThat(found(Which.NEEDS_PERSON)).containsExactly(set.id());
        assertThat(all(Which.ALL)).allSatisfy(this::isAsItsSheetsAre);
    }

    @Test
    void givesAPageOfWhatWasSoughtAndSaysHowManyThereAre() {
        List<ClassSet> eaves = new ArrayList<>();
        for (int number = 0; number < 5; number++) {
            eaves.add(aSet("Eaves " + number));
            aSet("Verge " + number);
        }

        Standings.Page page = standings.page(Share.everything(), Which.ALL, " eAVES ", 1, 3);

        assertThat(page.found()).isEqualTo(5);
        assertThat(page.sets().stream().map(Standing::classSet).toList())
                .containsExactly(eaves.get(3), eaves.get(2), eaves.get(1));
        assertThat(standings.page(Share.everything(), Which.ALL, "ridge", 0, 3).found()).isZero();
        assertThat(standings.page(new Share.OwnedBy(-1), Which.ALL, "", 0, 3).sets()).isEmpty();
    }

    private void isAsItsSheetsAre(Standing standing) {
        assertThat(standing.classSet()).isEqualTo(classSets.find(standing.classSet().id()).orElseThrow());
        assertThat(standing.progress()).isEqualTo(Progress.of(sheets.of(standing.classSet().id())));
    }

    private List<Standing> all(Which which) {
        return standings.page(Share.everything(), which, "", 0, MANY).sets();
    }

    private List<Long> found(Which which) {
        Standings.Page page = standings.page(Share.everything(), which, "", 0, MANY);
        assertThat(page.found()).isEqualTo(page.sets().size());
        return page.sets().stream().map(standing -> standing.classSet().id()).toList();
    }

    private ClassSet aSet(String title) {
        return classSets.add(title, "11B", List.of(new ClassListEntry("Ada", "1")), task, false);
    }

    private SheetEntry aSheet(ClassSet set, int number) {
        ScanFileEntry file = files.add(set.id(), "sheet-" + number + ".png", hash(number), 10).orElseThrow();
        return sheets.page(file.id(), 1);
    }

    private AssessedSheet.Read read(int seed, List<String> warnings) {
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", seed);
        LevelPage page = drawn.levelPage();
        LevelPage warned = new LevelPage(
                page.ink(), page.toScan(), page.scanPixelsPerMm(), page.rotationDegrees(), page.photograph(),
                page.calibration(), page.bar(), warnings, Optional.empty());
        return new AssessedSheet.Read(drawn.scan(), drawn.page(), drawn.expected(), warned, drawn.measured(), drawn.marked());
    }

    private void keep(SheetEntry sheet, AssessedSheet.Read read) {
        sheets.keep(sheet.id(), read, hash(8), hash(9), "{}");
        everyMarkIsDecided(sheet);
    }

    /** So that only warnings and states ask for a person. */
    private void everyMarkIsDecided(SheetEntry sheet) {
        database.sql("update sheets set undecided = 0 where id = ?").param(sheet.id()).update();
    }

    private static SheetCorrection correction(List<Segment> places) {
        return new SheetCorrection(Optional.empty(), places, "teacher", Instant.parse("2026-11-25T10:00:00Z"));
    }

    private static String hash(int number) {
        return "%064x".formatted(number);
    }
}
