package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.GroupTotal;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;
import wallplate.sheet.LevelPage;
import wallplate.sheet.SheetCode;
import wallplate.web.DrawnSheets;

/** The records on a real database: H2 in memory, with the migrations that the program itself runs. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:records;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/records",
            "wallplate.demonstration.enabled=false"
        })
class RecordsTest {

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
    private JdbcClient database;

    private KeptTask task;
    private ClassSet classSet;

    @BeforeEach
    void aClassSetOfThreeLearners() {
        task = tasks.add(DrawnSheets.aTask());
        classSet = classSets.add(
                "Eaves, 11B",
                "11B",
                List.of(new ClassListEntry("Ada", "1"), new ClassListEntry("Bo", "2"), new ClassListEntry("Cem", "3")),
                task,
                false);
    }

    @Test
    void keepsATaskWithoutLossAndFindsItByItsCode() {
        String typed = " " + task.learnerCode().toLowerCase(Locale.ROOT) + " ";

        assertThat(tasks.find(task.id()).orElseThrow().task()).isEqualTo(DrawnSheets.aTask());
        assertThat(tasks.byLearnerCode(typed).orElseThrow().id()).isEqualTo(task.id());
    }

    @Test
    void takesTheSameContentOnceInASet() {
        assertThat(files.add(classSet.id(), "a.png", hash(1), 10)).isPresent();
        assertThat(files.add(classSet.id(), "b.png", hash(1), 10)).isEmpty();
        assertThat(files.of(classSet.id())).extracting(ScanFileEntry::fileName).containsExactly("a.png");
    }

    @Test
    void matchesSheetsInOrderAndLeavesWhatAPersonSaidAlone() {
        SheetEntry first = aSheet(1);
        aSheet(2);
        long cem = classSets.learners(classSet.classId()).get(2).id();

        sheets.giveTo(first.id(), Optional.of(cem));
        sheets.match(classSet.id());
        aSheet(3);

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("Cem", "Ada", "Bo");
    }

    @Test
    void matchesASheetAnewWhoseLearnerGetsAnother() {
        SheetEntry first = aSheet(1);
        SheetEntry second = aSheet(2);
        long ada = first.learner().orElseThrow().id();

        sheets.giveTo(second.id(), Optional.of(ada));

        assertThat(sheets.find(first.id()).orElseThrow().label()).isEqualTo("Bo");
        assertThat(sheets.find(second.id()).orElseThrow().label()).isEqualTo("Ada");
    }

    @Test
    void carriesTheRestOfThePileAlongWhenOneSheetIsCorrected() {
        aSheet(1);
        SheetEntry second = aSheet(2);
        long cem = classSets.learners(classSet.classId()).get(2).id();

        sheets.giveTo(second.id(), Optional.of(cem));
        aSheet(3);

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("Ada", "Cem", "Bo");
        assertThat(sheets.of(classSet.id()))
                .extracting(SheetEntry::matchedBy)
                .containsExactly(MatchedBy.ORDER, MatchedBy.HAND, MatchedBy.ORDER);
    }

    @Test
    void matchesASheetByItsPrintedCodeOnceItIsRead() {
        SheetEntry first = aSheet(1);
        aSheet(2);

        sheets.keep(first.id(), withCode("L3", DrawnSheets.aSheet(task.task(), "a.png", 1)), hash(8), hash(9), "{}");

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("Cem", "Ada");
        SheetEntry coded = sheets.find(first.id()).orElseThrow();
        assertThat(coded.matchedBy()).isEqualTo(MatchedBy.CODE);
        assertThat(coded.code().orElseThrow().taskId()).isEqualTo(task.task().id());
    }

    @Test
    void givesSwappedSheetsAtOnce() {
        SheetEntry first = aSheet(1);
        SheetEntry second = aSheet(2);
        List<Learner> learners = classSets.learners(classSet.classId());

        sheets.giveTo(Map.of(
                first.id(), Optional.of(learners.get(1).id()), second.id(), Optional.of(learners.get(0).id())));

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::label).containsExactly("Bo", "Ada");
    }

    @Test
    void countsASetAsItsSheetsDo() {
        aSheet(1);
        SheetEntry read = aSheet(2);
        SheetEntry refused = aSheet(3);
        SheetEntry seen = aSheet(4);
        sheets.beginReading(aSheet(5).id());
        sheets.fail(aSheet(6).id(), "broken");
        sheets.keep(read.id(), DrawnSheets.aSheet(task.task(), "b.png", 3), hash(8), hash(9), "{}");
        sheets.refuse(refused.id(), "no bar", "{}");
        sheets.refuse(seen.id(), "no bar", "{}");
        sheets.setChecked(seen.id(), true);

        Progress counted = Progress.of(sheets.of(classSet.id()));
        assertThat(sheets.progress(classSet.id())).isEqualTo(counted);
        assertThat(sheets.progressOfAll()).containsEntry(classSet.id(), counted);
        assertThat(sheets.progress(-1)).isEqualTo(Progress.of(List.of()));
        assertThat(sheets.of(classSet.id())).allSatisfy(sheet -> assertThat(sheets.find(sheet.id())).contains(sheet));
    }

    @Test
    void keepsWhereACriterionWasMeasured() {
        SheetEntry sheet = aSheet(1);
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", 1);
        sheets.keep(sheet.id(), drawn, hash(8), hash(9), "{}");
        Mark mark = drawn.marked().marks().stream()
                .filter(one -> one.key().isPresent())
                .findFirst()
                .orElseThrow();

        MarkPlace place = sheets.places(classSet.id(), mark.criterion()).get(0);

        assertThat(place.pageWidthMm()).isEqualTo(KeptAssessment.of(drawn).page().widthMm());
        List<Segment> evidence = drawn.measured().measurement(mark.key().orElseThrow()).orElseThrow().evidence();
        assertThat(place.evidence()).hasSameSizeAs(evidence);
        assertThat(place.evidence().get(0).start().x()).isCloseTo(evidence.get(0).start().x(), within(0.005));
        assertThat(sheets.marksOfSet(classSet.id(), mark.criterion())).extracting(MarkEntry::sheetId).containsExactly(sheet.id());
        assertThat(sheets.criteria(classSet.id())).extracting(CriterionEntry::id)
                .containsExactlyElementsOf(drawn.marked().marks().stream().map(Mark::criterion).toList());
    }

    /** As a sheet stands that was read before places were kept with the marks. */
    @Test
    void givesSheetsThatWereReadBeforeTheirPlacesFromWhatWasKept() {
        SheetEntry sheet = aSheet(1);
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", 1);
        sheets.keep(sheet.id(), drawn, hash(8), hash(9), "{}");
        String criterion = sheets.marks(sheet.id()).stream()
                .filter(mark -> !sheets.places(classSet.id(), mark.criterion()).isEmpty())
                .findFirst()
                .orElseThrow()
                .criterion();
        List<MarkPlace> places = sheets.places(classSet.id(), criterion);
        assertThat(sheets.withoutPlaces(classSet.id())).isZero();
        database.sql("update marks set evidence = null where sheet_id = ?").param(sheet.id()).update();
        database.sql("update sheets set page_width_mm = null, page_height_mm = null, page_pixels_per_mm = null where id = ?")
                .param(sheet.id())
                .update();
        assertThat(sheets.places(classSet.id(), criterion)).isEmpty();
        assertThat(sheets.withoutPlaces(classSet.id())).isEqualTo(1);

        sheets.keepPlaces(classSet.id());

        assertThat(sheets.withoutPlaces(classSet.id())).isZero();
        assertThat(sheets.places(classSet.id(), criterion)).isEqualTo(places);
    }

    private static AssessedSheet.Read withCode(String learner, AssessedSheet.Read sheet) {
        LevelPage page = sheet.levelPage();
        LevelPage coded = new LevelPage(
                page.ink(), page.toScan(), page.scanPixelsPerMm(), page.rotationDegrees(), page.photograph(),
                page.calibration(), page.bar(), page.warnings(),
                Optional.of(new SheetCode(sheet.expected().task().id(), learner, 1)));
        return new AssessedSheet.Read(
                sheet.scan(), sheet.page(), sheet.expected(), coded, sheet.measured(), sheet.marked());
    }

    @Test
    void keepsAnAssessmentAsItWas() {
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", 1);
        SheetEntry sheet = aSheet(1);

        sheets.keep(sheet.id(), drawn, hash(8), hash(9), "{}");

        assertThat(sheets.assessment(sheet.id()).orElseThrow()).isEqualTo(KeptAssessment.of(drawn));
        SheetEntry kept = sheets.find(sheet.id()).orElseThrow();
        assertThat(kept.state()).isEqualTo(SheetState.READ);
        assertThat(kept.awarded()).isEqualTo(drawn.marked().awarded());
        assertThat(kept.undecided()).isEqualTo(drawn.marked().undecided());
        assertThat(sheets.marks(sheet.id())).hasSameSizeAs(drawn.marked().marks());
    }

    /** Two criteria of a mark each share one mark: all the others count alone, whatever a person decides. */
    @Test
    void holdsAGroupToItsMaximumAfterAMarkWasChanged() {
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", 1);
        List<String> pair = drawn.marked().marks().stream()
                .limit(2)
                .map(Mark::criterion)
                .toList();
        MarkedSheet grouped = new MarkedSheet(
                drawn.marked().guideline(), drawn.marked().marks(), List.of(new GroupTotal("pair", "Pair", pair, 1)));
        SheetEntry sheet = aSheet(1);
        sheets.keep(sheet.id(), with(grouped, drawn), hash(8), hash(9), "{}");

        pair.forEach(criterion -> sheets.change(
                sheet.id(), new MarkChange(criterion, Optional.of(Verdict.MET), 1, "seen", "teacher", Instant.EPOCH)));

        assertThat(sheets.assessment(sheet.id()).orElseThrow().marked().groups()).isEqualTo(grouped.groups());
        double others = drawn.marked().marks().stream().skip(2).mapToDouble(Mark::awarded).sum();
        SheetEntry kept = sheets.find(sheet.id()).orElseThrow();
        assertThat(kept.awarded()).isEqualTo(1 + others);
        assertThat(kept.available()).isEqualTo(drawn.marked().available() - 1);
    }

    private static AssessedSheet.Read with(MarkedSheet marked, AssessedSheet.Read sheet) {
        return new AssessedSheet.Read(
                sheet.scan(), sheet.page(), sheet.expected(), sheet.levelPage(), sheet.measured(), marked);
    }

    @Test
    void changesAMarkAndGivesTheGuidelinesMarkBack() {
        SheetEntry sheet = aSheet(1);
        sheets.keep(sheet.id(), DrawnSheets.aSheet(task.task(), "a.png", 1), hash(8), hash(9), "{}");
        MarkEntry met = sheets.marks(sheet.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET)
                .findFirst()
                .orElseThrow();
        double before = sheets.find(sheet.id()).orElseThrow().awarded();

        sheets.change(sheet.id(), change(met, Optional.of(Verdict.NOT_MET), 0, "rubbed out"));
        double after = sheets.find(sheet.id()).orElseThrow().awarded();
        sheets.change(sheet.id(), change(met, Optional.empty(), 0, ""));

        assertThat(after).isEqualTo(before - met.awarded());
        assertThat(sheets.find(sheet.id()).orElseThrow().awarded()).isEqualTo(before);
        assertThat(sheets.changes(sheet.id())).hasSize(2);
    }

    @Test
    void keepsAMarkSetByHandWhenTheSheetIsReadAgain() {
        SheetEntry sheet = aSheet(1);
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), "a.png", 1);
        sheets.keep(sheet.id(), drawn, hash(8), hash(9), "{}");
        MarkEntry mark = sheets.marks(sheet.id()).get(0);
        sheets.change(sheet.id(), change(mark, Optional.of(Verdict.NOT_MET), 0, "wrong corner"));

        sheets.keep(sheet.id(), drawn, hash(8), hash(9), "{}");

        assertThat(sheets.marks(sheet.id()).get(0).verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(sheets.marks(sheet.id()).get(0).guidelineVerdict()).isEqualTo(mark.guidelineVerdict());
    }

    @Test
    void keepsCorrectionsWithWhoMadeThemAndGivesTheFirstReadingBack() {
        SheetEntry sheet = aSheet(1);
        AssessedSheet.Read asRead = DrawnSheets.aSheet(task.task(), "a.png", 1);
        AssessedSheet.Read measuredAgain = DrawnSheets.aSheet(task.task(), "a.png", 2);
        sheets.keep(sheet.id(), asRead, hash(8), hash(9), "{}");
        sheets.setChecked(sheet.id(), true);
        MarkEntry mark = sheets.marks(sheet.id()).get(0);
        sheets.change(sheet.id(), change(mark, Optional.of(Verdict.NOT_MET), 0, "wrong corner"));
        Segment bar = Segment.between(20, 15.25, 119.5, 15);
        List<Segment> lines = List.of(Segment.between(40, 50, 40, 90), Segment.between(51.125, 50, 51, 90));

        corrections.keep(sheet.id(), correction(Optional.empty(), List.of(bar)), measuredAgain, hash(18), hash(19), "{1}");
        corrections.keep(
                sheet.id(), correction(Optional.of("wall.thickness"), lines), measuredAgain, hash(18), hash(19), "{2}");

        assertThat(SheetCorrections.standing(corrections.of(sheet.id())))
                .containsExactly(
                        correction(Optional.of("wall.thickness"), lines), correction(Optional.empty(), List.of(bar)));
        assertThat(sheets.assessment(sheet.id())).contains(KeptAssessment.of(measuredAgain));
        assertThat(corrections.asRead(sheet.id()).orElseThrow().assessment()).isEqualTo(KeptAssessment.of(asRead));
        assertThat(sheets.marks(sheet.id()).get(0).verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(sheets.find(sheet.id()).orElseThrow().checkedAt()).isEmpty();

        corrections.restore(sheet.id(), correction(Optional.empty(), List.of()));
        corrections.restore(sheet.id(), correction(Optional.of("wall.thickness"), List.of()));

        assertThat(SheetCorrections.standing(corrections.of(sheet.id()))).isEmpty();
        assertThat(corrections.of(sheet.id())).hasSize(4);
        assertThat(sheets.assessment(sheet.id())).contains(KeptAssessment.of(asRead));
        assertThat(sheets.find(sheet.id()).orElseThrow().pagePicture()).contains(hash(8));
        assertThat(sheets.resultJson(sheet.id())).contains("{}");
        assertThat(sheets.marks(sheet.id()).get(0).verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(sheets.marks(sheet.id()).stream().skip(1).map(MarkEntry::verdict).toList())
                .isEqualTo(asRead.marked().marks().stream().skip(1).map(Mark::verdict).toList());
    }

    private static SheetCorrection correction(Optional<String> key, List<Segment> places) {
        return new SheetCorrection(key, places, "teacher", Instant.parse("2026-11-25T10:00:00Z"));
    }

    @Test
    void stopsWhatIsNotReadAndTakesItUpAgain() {
        ScanFileEntry done = files.add(classSet.id(), "a.png", hash(1), 10).orElseThrow();
        ScanFileEntry waiting = files.add(classSet.id(), "b.png", hash(2), 10).orElseThrow();
        files.begin(done.id());
        files.finish(done.id());

        files.stop(classSet.id());

        assertThat(files.begin(waiting.id())).isFalse();
        assertThat(files.takeUpAgain(classSet.id())).extracting(ScanFileEntry::id).containsExactly(waiting.id());
        assertThat(files.begin(waiting.id())).isTrue();
    }

    private SheetEntry aSheet(int number) {
        ScanFileEntry file = files.add(classSet.id(), "sheet-" + number + ".png", hash(number), 10).orElseThrow();
        return sheets.page(file.id(), 1);
    }

    private static MarkChange change(MarkEntry mark, Optional<Verdict> verdict, double awarded, String reason) {
        return new MarkChange(
                mark.criterion(), verdict, awarded, reason, "teacher", Instant.parse("2026-11-25T09:00:00Z"));
    }

    private static String hash(int number) {
        return "%064x".formatted(number);
    }
}
