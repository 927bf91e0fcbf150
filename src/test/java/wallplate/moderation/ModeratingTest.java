package wallplate.moderation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import wallplate.marking.Verdict;
import wallplate.moderation.SamplingRule.Choice;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;

/** A moderation from the draw to the decision, on a real database. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:moderation;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/moderation",
            "wallplate.demonstration.enabled=false"
        })
class ModeratingTest {

    private static final int SHEETS = 6;
    private static final Instant BEFORE = Instant.parse("2026-11-25T09:00:00Z");

    @Autowired
    private Moderating moderating;

    @Autowired
    private Moderations moderations;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    private ClassSet classSet;

    @BeforeEach
    void sixSheetsWithEveryCriterionDecided() {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        classSet = classSets.add("Eaves, 11B", "11B", List.of(new ClassListEntry("Ada", "1")), task, false);
        for (int number = 1; number <= SHEETS; number++) {
            ScanFileEntry file =
                    files.add(classSet.id(), number + ".png", "%064x".formatted(number), 10).orElseThrow();
            SheetEntry sheet = sheets.page(file.id(), 1);
            sheets.keep(sheet.id(), DrawnSheets.aSheet(task.task(), "a.png", number), hash(8), hash(9), "{}");
            decideWhatIsOpen(sheet.id());
        }
    }

    @Test
    void keepsASampleAsItWasDrawn() {
        Moderation drawn = drawn(4);

        assertThat(moderations.find(drawn.id())).contains(drawn);
        assertThat(moderations.of(classSet.id())).containsExactly(drawn);
        assertThat(drawn.sheets()).hasSize(4);
        assertThat(drawn.candidates()).isEqualTo(SHEETS);
        assertThat(drawn.rule().words()).startsWith("4 sheets:");
    }

    @Test
    void drawsNoSheetThatIsNotDecidedAndSaysHowManyWereLeftOut() {
        SheetEntry first = sheets.of(classSet.id()).get(0);
        MarkEntry mark = sheets.marks(first.id()).get(0);
        change(mark, Verdict.UNDECIDED, 0);

        Moderation all = drawn(SHEETS);

        assertThat(all.leftOut()).isEqualTo(1);
        assertThat(all.sheets()).extracting(SampledSheet::sheetId).doesNotContain(first.id());
    }

    @Test
    void saysWhyNothingCanBeDrawn() {
        ClassSet empty = classSets.add("Empty", "11C", List.of(), tasks.all().get(0), false);

        DrawOutcome outcome = moderating.draw(empty.id(), rule(3), "M. Two", "teacher");

        assertThat(outcome).isInstanceOfSatisfying(DrawOutcome.NotDrawn.class, none ->
                assertThat(none.because()).contains("Check the sheets first"));
    }

    @Test
    void showsTheSecondMarkerTheSameWhateverTheFirstMarksAre() {
        Moderation one = drawn(1);
        BlindSheet before = moderating.sheet(one.id(), 1).orElseThrow();
        long sheetId = one.sheets().get(0).sheetId();
        for (MarkEntry mark : sheets.marks(sheetId)) {
            change(mark, Verdict.NOT_MET, mark.available() / 2);
        }

        assertThat(moderating.sheet(one.id(), 1)).contains(before);
    }

    @Test
    void comparesOnlyWhatWasHandedInAndThenNothingCanBeChanged() {
        Moderation moderation = drawn(3);
        markLikeTheFirst(moderation, 1, 0);
        assertThat(moderating.handIn(moderation.id())).isFalse();
        assertThat(moderating.report(moderation.id())).isEmpty();
        markLikeTheFirst(moderation, 2, 0);
        markLikeTheFirst(moderation, 3, 0);

        assertThat(moderating.handIn(moderation.id())).isTrue();

        assertThat(moderating.report(moderation.id())).isPresent();
        assertThatThrownBy(() -> markLikeTheFirst(moderation, 1, 0)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void findsFullAgreementWhereTheSecondMarksAreTheFirst() {
        AgreementReport report = handedIn(SHEETS, 0);

        assertThat(report.total().same()).isEqualTo(SHEETS);
        assertThat(report.total().kappa().told().orElseThrow().value()).isEqualTo(1, within(1e-12));
        assertThat(report.criteria()).allMatch(criterion -> criterion.same() == SHEETS);
        assertThat(report.criteria()).hasSameSizeAs(sheets.marks(sheets.of(classSet.id()).get(0).id()));
    }

    @Test
    void findsByHowMuchTheSecondMarkerIsStricter() {
        AgreementReport report = handedIn(SHEETS, 0.5);

        // The first criterion that earned marks is half a mark lower on every sheet.
        assertThat(report.total().difference().told().orElseThrow().mean()).isEqualTo(-0.5, within(1e-9));
        assertThat(report.total().same()).isZero();
    }

    @Test
    void adjustsMarksByNewEntriesAndKeepsTheComparison() {
        Moderation moderation = drawn(2);
        markAndHandIn(moderation, 0.5);
        AgreementReport before = moderating.report(moderation.id()).orElseThrow();
        MarkEntry example = sheets.marks(sheets.of(classSet.id()).get(0).id()).get(0);
        Map<Long, Double> totals = totals();
        Map<Long, Double> marksBefore = marksOf(example.criterion()).stream()
                .collect(Collectors.toMap(MarkEntry::sheetId, MarkEntry::awarded));

        DecisionEntry entry = moderating.decide(
                moderation.id(), new Decision.Adjust(example.criterion(), -0.25, 0, 1000), "marked high", "head");

        for (MarkEntry mark : marksOf(example.criterion())) {
            assertThat(mark.awarded()).isEqualTo(Math.max(0, marksBefore.get(mark.sheetId()) - 0.25));
        }
        assertThat(entry.outcome()).startsWith(example.title() + ", by −0.25:");
        assertThat(moderating.report(moderation.id())).contains(before);
        assertThat(moderations.find(moderation.id()).orElseThrow().decisions()).containsExactly(entry);
        totals().forEach((sheet, total) -> assertThat(total).isIn(totals.get(sheet), totals.get(sheet) - 0.25));
        assertThat(totals()).isNotEqualTo(totals);
    }

    @Test
    void sendsTheWholeSetBackToBeMarkedAgain() {
        sheets.of(classSet.id()).forEach(sheet -> sheets.setChecked(sheet.id(), true));
        classSets.release(classSet.id());
        Moderation moderation = drawn(2);
        markAndHandIn(moderation, 0.5);

        moderating.decide(moderation.id(), new Decision.MarkAgain(), "too far apart", "head");

        assertThat(sheets.of(classSet.id())).allMatch(sheet -> sheet.checkedAt().isEmpty());
        assertThat(classSets.find(classSet.id()).orElseThrow().releasedAt()).isEmpty();
    }

    @Test
    void decidesNothingBeforeTheSecondMarksAreIn() {
        Moderation moderation = drawn(2);

        assertThatThrownBy(() -> moderating.decide(moderation.id(), new Decision.Accept(), "fine", "head"))
                .isInstanceOf(IllegalStateException.class);
    }

    private Moderation drawn(int size) {
        return ((DrawOutcome.Drawn) moderating.draw(classSet.id(), rule(size), "M. Two", "teacher")).moderation();
    }

    private static SamplingRule rule(int size) {
        return new SamplingRule(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(size), 5);
    }

    private AgreementReport handedIn(int size, double stricter) {
        Moderation moderation = drawn(size);
        markAndHandIn(moderation, stricter);
        return moderating.report(moderation.id()).orElseThrow();
    }

    private void markAndHandIn(Moderation moderation, double stricter) {
        moderation.sheets().forEach(sheet -> markLikeTheFirst(moderation, sheet.place(), stricter));
        moderating.handIn(moderation.id());
    }

    /** The first marker's marks, less so many in the first criterion that earned as much. */
    private void markLikeTheFirst(Moderation moderation, int place, double stricter) {
        BlindSheet sheet = moderating.sheet(moderation.id(), place).orElseThrow();
        Map<String, String> typed = new LinkedHashMap<>();
        double left = stricter;
        for (MarkEntry mark : sheets.marks(moderation.at(place).orElseThrow().sheetId())) {
            double taken = mark.awarded() >= left ? left : 0;
            left -= taken;
            typed.put(mark.criterion(), Double.toString(mark.awarded() - taken));
        }
        moderating.mark(sheet, SecondMarks.read(sheet.criteria(), typed));
    }

    private void decideWhatIsOpen(long sheetId) {
        sheets.marks(sheetId).stream()
                .filter(MarkEntry::isUndecided)
                .forEach(mark -> change(mark, Verdict.MET, mark.available()));
    }

    private void change(MarkEntry mark, Verdict verdict, double awarded) {
        sheets.change(
                mark.sheetId(),
                new MarkChange(mark.criterion(), Optional.of(verdict), awarded, "for the test", "teacher", BEFORE));
    }

    private List<MarkEntry> marksOf(String criterion) {
        return sheets.marksOfSet(classSet.id()).stream()
                .filter(mark -> mark.criterion().equals(criterion))
                .toList();
    }

    private Map<Long, Double> totals() {
        Map<Long, Double> totals = new LinkedHashMap<>();
        sheets.of(classSet.id()).forEach(sheet -> totals.put(sheet.id(), sheet.awarded()));
        return totals;
    }

    private static String hash(int number) {
        return "%064x".formatted(number);
    }
}
