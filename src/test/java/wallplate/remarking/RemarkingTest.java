package wallplate.remarking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.measure.LineMeasure;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** Marking a class set again: what is shown beforehand, what changes and what stands. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:remarking;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/remarking",
            "wallplate.demonstration.enabled=false"
        })
@Import(DecidedSets.class)
class RemarkingTest {

    private static final int SIZE = 4;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Remarking remarking;

    @Autowired
    private GuidelineVersions versions;

    @Autowired
    private DecidedSets decidedSets;

    private ClassSet classSet;

    @BeforeEach
    void aClassSet() {
        classSet = decidedSets.aSet(tasks.add(DrawnSheets.aTask()), SIZE, 7);
    }

    @Test
    void showsWhatWouldChangeAndChangesNothing() {
        List<MarkEntry> before = sheets.marksOfSet(classSet.id());

        SetPreview preview = preview(strict());

        assertThat(preview.changed()).isNotEmpty();
        assertThat(preview.changed()).allSatisfy(sheet -> assertThat(sheet.preview().awardedAfter())
                .isLessThan(sheet.preview().awardedBefore()));
        assertThat(sheets.marksOfSet(classSet.id())).isEqualTo(before);
        assertThat(versions.runs(classSet.id())).isEmpty();
    }

    @Test
    void changesWhatWasShownAndSaysUnderWhichVersion() {
        SetPreview shown = preview(strict());

        remarking.apply(classSet, strict(), "A. Head");

        for (SheetPreview sheet : shown.sheets()) {
            SheetEntry now = sheets.find(sheet.sheet().id()).orElseThrow();
            assertThat(now.awarded()).isEqualTo(sheet.preview().awardedAfter());
            assertThat(sheets.assessment(now.id()).orElseThrow().marked().guideline())
                    .isEqualTo(shown.guideline().version());
        }
        assertThat(remarking.versionOf(again())).isEqualTo(shown.guideline().version());
        GuidelineRun run = versions.runs(classSet.id()).get(0);
        assertThat(run.fromVersion()).isEqualTo(shown.fromVersion());
        assertThat(run.sheetsChanged()).isEqualTo(shown.changed().size());
        assertThat(run.appliedBy()).isEqualTo("A. Head");
    }

    @Test
    void keepsTheTextOfTheVersionBeforeAndAfter() {
        String before = remarking.versionOf(classSet);

        remarking.apply(classSet, strict(), "A. Head");

        for (String version : List.of(before, remarking.versionOf(again()))) {
            KeptGuideline kept = versions.find(classSet.taskId(), version).orElseThrow();
            assertThat(guideline(kept.marking()).version()).isEqualTo(version);
            assertThat(kept.keptBy()).isEqualTo("A. Head");
        }
    }

    @Test
    void aSecondRunOfTheSameGuidelineChangesNothing() {
        remarking.apply(classSet, strict(), "teacher");
        List<MarkEntry> before = sheets.marksOfSet(classSet.id());

        RemarkOutcome second = remarking.apply(again(), strict(), "teacher");

        assertThat(((RemarkOutcome.Marked) second).preview().changed()).isEmpty();
        assertThat(sheets.marksOfSet(classSet.id())).isEqualTo(before);
    }

    @Test
    void leavesAMarkSetByHandAndShowsWhereTheRunDiffers() {
        MarkEntry byHand = rightLength();
        decidedSets.change(byHand, Verdict.NOT_MET, 0);

        SheetPreview sheet = of(preview(doubled()), byHand.sheetId());
        remarking.apply(classSet, doubled(), "teacher");

        HandMark shown = sheet.differing().stream()
                .filter(hand -> hand.standing().criterion().equals(byHand.criterion()))
                .findFirst()
                .orElseThrow();
        assertThat(shown.after().orElseThrow().awarded()).isEqualTo(2);
        MarkEntry now = mark(byHand);
        assertThat(now.awarded()).isZero();
        assertThat(now.guidelineAwarded()).isEqualTo(2);
        assertThat(now.change().orElseThrow().changedBy()).isEqualTo("teacher");
    }

    @Test
    void neverGivesMoreByHandThanTheNewGuidelineHasAndSaysWhy() {
        remarking.apply(classSet, doubled(), "teacher");
        MarkEntry byHand = rightLength();
        decidedSets.change(byHand, Verdict.MET, 2);

        remarking.apply(again(), Map.of(), "A. Head");

        MarkEntry now = mark(byHand);
        assertThat(now.awarded()).isEqualTo(1);
        assertThat(now.change().orElseThrow().reason()).contains("2 by hand").contains("which has 1");
        assertThat(now.change().orElseThrow().changedBy()).isEqualTo("A. Head");
    }

    @Test
    void bringsACheckedSheetBackWhereSomethingIsOpenNow() {
        sheets.of(classSet.id()).forEach(sheet -> sheets.setChecked(sheet.id(), true));
        Map<String, Object> withJudgement = new LinkedHashMap<>(guideline(Map.of()).asMap());
        withJudgement.put("criteria", List.of(Map.of("id", "line-work", "marks", 3, "teacher", "Are outlines dark?")));

        remarking.apply(classSet, withJudgement, "teacher");

        assertThat(sheets.of(classSet.id())).allMatch(SheetEntry::needsPerson);
        assertThat(sheets.of(classSet.id())).allMatch(sheet -> sheet.available() == 3);
    }

    /** Sheets measured before lines were are left to the teacher; one that was measured since is marked from what is kept. */
    @Test
    void marksTheLinesFromWhatIsKept() {
        SheetEntry since = sheets.of(classSet.id()).get(0);
        keepWithOutlines(since, 0.5);
        Map<String, Object> withLines = new LinkedHashMap<>(guideline(Map.of()).asMap());
        withLines.put("criteria", List.of(Map.of("id", "outlines", "marks", 2, "lines", "outline-breadth")));

        remarking.apply(classSet, withLines, "teacher");

        for (MarkEntry mark : sheets.marksOfSet(classSet.id())) {
            boolean measured = mark.sheetId() == since.id();
            assertThat(mark.verdict()).isEqualTo(measured ? Verdict.MET : Verdict.UNDECIDED);
            assertThat(mark.awarded()).isEqualTo(measured ? 2 : 0);
            assertThat(mark.feedback()).contains(measured ? "0.5 mm broad" : "not measured");
        }
    }

    private void keepWithOutlines(SheetEntry sheet, double breadthMm) {
        AssessedSheet.Read read = DrawnSheets.aSheet(classSet.task(), "a.png", 1);
        List<Measurement> measurements = new ArrayList<>(read.measured().measurements());
        measurements.add(Measurement.of(LineMeasure.OUTLINE_BREADTH.key(), new Finding.Quantity(breadthMm, 0.05)));
        MeasuredSheet measured =
                new MeasuredSheet(measurements, read.measured().parts(), read.measured().heel());
        String picture = "%064x".formatted(8);
        sheets.keep(
                sheet.id(),
                new AssessedSheet.Read(
                        read.scan(), read.page(), read.expected(), read.levelPage(), measured, read.marked()),
                picture,
                picture,
                "{}");
    }

    @Test
    void namesWhatDoesNotFitTheTaskAsItWasHandedOut() {
        RemarkOutcome outcome = remarking.apply(
                classSet, Map.of("criteria", List.of(Map.of("measure", "chimney.width"))), "teacher");

        assertThat(((RemarkOutcome.Refused) outcome).faults())
                .extracting(fault -> fault.key())
                .containsExactly("marking.criteria[1].measure");
        assertThat(versions.runs(classSet.id())).isEmpty();
    }

    private SetPreview preview(Map<String, Object> marking) {
        return ((RemarkOutcome.Marked) remarking.preview(again(), marking)).preview();
    }

    private static SheetPreview of(SetPreview preview, long sheetId) {
        return preview.sheets().stream()
                .filter(sheet -> sheet.sheet().id() == sheetId)
                .findFirst()
                .orElseThrow();
    }

    /** A tenth of the usual tolerances: marks can only be lost. */
    private static Map<String, Object> strict() {
        return Map.of("name", "strict", "tolerance", Map.of("length", 0.1, "thickness", 0.05, "angle", 0.1));
    }

    /** Two marks for each criterion. */
    @SuppressWarnings("unchecked")
    private Map<String, Object> doubled() {
        Map<String, Object> marking = new LinkedHashMap<>(guideline(Map.of()).asMap());
        List<Map<String, Object>> criteria = (List<Map<String, Object>>) marking.get("criteria");
        marking.put(
                "criteria",
                criteria.stream()
                        .map(criterion -> {
                            Map<String, Object> twice = new HashMap<>(criterion);
                            twice.put("marks", 2);
                            return twice;
                        })
                        .toList());
        return marking;
    }

    private Guideline guideline(Map<String, Object> marking) {
        DrawingTask task = classSet.task().withMarking(marking);
        return ((GuidelineReading.Accepted) Guideline.read(Solver.solve(task))).guideline();
    }

    private MarkEntry rightLength() {
        return sheets.marksOfSet(classSet.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET && mark.reading().unit().equals("mm"))
                .findFirst()
                .orElseThrow();
    }

    private MarkEntry mark(MarkEntry like) {
        return sheets.marks(like.sheetId()).stream()
                .filter(mark -> mark.criterion().equals(like.criterion()))
                .findFirst()
                .orElseThrow();
    }

    private ClassSet again() {
        return classSets.find(classSet.id()).orElseThrow();
    }
}
