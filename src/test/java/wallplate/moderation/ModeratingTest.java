package wallplate.moderation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import wallplate.marking.Verdict;
import wallplate.moderation.SamplingRule.Choice;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** A moderation from the draw to the decision, on a real database. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:moderation;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/moderation",
            "wallplate.demonstration.enabled=false"
        })
@Import(DecidedSets.class)
class ModeratingTest {

    private static final int SHEETS = 6;

    @Autowired
    private Moderating moderating;

    @Autowired
    private Moderations moderations;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private DecidedSets sets;

    @Autowired
    private Sheets sheets;

    private ClassSet classSet;

    @BeforeEach
    void sixSheetsWithEveryCriterionDecided() {
        classSet = sets.aSet(tasks.add(DrawnSheets.aTask()), SHEETS, 1);
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
        sets.change(mark, Verdict.UNDECIDED, 0);

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
            sets.change(mark, Verdict.NOT_MET, mark.available() / 2);
        }

        assertThat(moderating.sheet(one.id(), 1)).contains(before);
    }

    @Test
    void comparesOnlyWhatWasHandedInAndThenNothingCanBeChanged() {
        Moderation moderation = drawn(3);
        sets.markLikeTheFirst(moderation, 1, 0);
        assertThat(moderating.handIn(moderation.id())).isFalse();
        assertThat(moderating.report(moderation.id())).isEmpty();
        sets.markLikeTheFirst(moderation, 2, 0);
        sets.markLikeTheFirst(moderation, 3, 0);

        assertThat(moderating.handIn(moderation.id())).isTrue();

        assertThat(moderating.report(moderation.id())).isPresent();
        assertThatThrownBy(() -> sets.markLikeTheFirst(moderation, 1, 0)).isInstanceOf(IllegalStateException.class);
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
        sets.markAndHandIn(moderation, 0.5);
        AgreementReport before = moderating.report(moderation.id()).orElseThrow();
        MarkEntry example = sheets.marks(sheets.of(classSet.id()).get(0).id()).get(0);
        Map<Long, Double> totals = totals();
        Map<Long, Double> marksBefore = marksOf(example.criterion()).stream()
                .collect(Collectors.toMap(MarkEntry::sheetId, MarkEntry::awarded));

        DecisionEntry entry = moderating.decide(
                moderation.id(), new Decision.Adjust(example.criterion(), -0.25, 0, 1000), "marked high", "head", 0).orElseThrow();

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
    void adjustsOnceWhereTheSameDecisionIsSentTwice() {
        Moderation moderation = drawn(2);
        sets.markAndHandIn(moderation, 0.5);
        String criterion = sheets.marks(sheets.of(classSet.id()).get(0).id()).get(0).criterion();
        Decision.Adjust decision = new Decision.Adjust(criterion, -0.25, 0, 1000);
        moderating.decide(moderation.id(), decision, "marked high", "head", 0);
        Map<Long, Double> totals = totals();

        assertThat(moderating.decide(moderation.id(), decision, "marked high", "head", 0)).isEmpty();

        assertThat(totals()).isEqualTo(totals);
        assertThat(moderations.find(moderation.id()).orElseThrow().decisions()).hasSize(1);
    }

    @Test
    void sendsTheWholeSetBackToBeMarkedAgain() {
        sheets.of(classSet.id()).forEach(sheet -> sheets.setChecked(sheet.id(), true));
        classSets.release(classSet.id());
        Moderation moderation = drawn(2);
        sets.markAndHandIn(moderation, 0.5);

        moderating.decide(moderation.id(), new Decision.MarkAgain(), "too far apart", "head", 0);

        assertThat(sheets.of(classSet.id())).allMatch(sheet -> sheet.checkedAt().isEmpty());
        assertThat(classSets.find(classSet.id()).orElseThrow().releasedAt()).isEmpty();
    }

    @Test
    void decidesNothingBeforeTheSecondMarksAreIn() {
        Moderation moderation = drawn(2);

        assertThatThrownBy(() -> moderating.decide(moderation.id(), new Decision.Accept(), "fine", "head", 0))
                .isInstanceOf(IllegalStateException.class);
    }

    private Moderation drawn(int size) {
        return sets.drawn(classSet, size);
    }

    private static SamplingRule rule(int size) {
        return new SamplingRule(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(size), 5);
    }

    private AgreementReport handedIn(int size, double stricter) {
        Moderation moderation = drawn(size);
        sets.markAndHandIn(moderation, stricter);
        return moderating.report(moderation.id()).orElseThrow();
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
}
