package wallplate.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.marking.Reasons;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.samples.SampleSet;
import wallplate.sheet.LevelPage;
import wallplate.sheet.SheetCode;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;
import wallplate.web.DrawnSheets;

/** The hint on drawn sheets, measured as by a good scan, marked by their own task and by others. */
class OtherTaskTest {

    private static final List<Long> SEEDS = List.of(64_001L, 64_002L);
    private static final int SHEETS = 120;
    private static final int TASKS = 12;
    private static final double UNCERTAINTY = 0.05;

    @Test
    void hintsAtOtherTasksAndNeverAtTheSheetsOwn() {
        int own = 0;
        int others = 0;
        for (long seed : SEEDS) {
            List<TruthSheet> sheets =
                    SampleSet.drawn(seed, SHEETS, TASKS).stream().map(TruthSheet::of).toList();
            for (int i = 0; i < SHEETS; i++) {
                ExpectedDrawing other = sheets.get((i + 1) % TASKS).expected();
                own += isHintedAt(sheets.get(i), sheets.get(i).expected()) ? 1 : 0;
                others += isHintedAt(sheets.get(i), other) ? 1 : 0;
            }
        }
        assertThat(own).as("sheets of their own task, of %d", SEEDS.size() * SHEETS).isZero();
        assertThat(others)
                .as("sheets of another task, of %d", SEEDS.size() * SHEETS)
                .isGreaterThan(SEEDS.size() * SHEETS * 6 / 10);
    }

    private static boolean isHintedAt(TruthSheet sheet, ExpectedDrawing by) {
        Random random = new Random(sheet.name().hashCode());
        MeasuredSheet measured = sheet(sheet.drawn().measurements().stream()
                .map(each -> each.finding() instanceof Finding.Quantity drawn
                        ? Measurement.of(
                                each.key(),
                                new Finding.Quantity(drawn.value() + UNCERTAINTY * random.nextGaussian(), UNCERTAINTY))
                        : each)
                .toList());
        return OtherTask.isLikely(measured, marked(by, measured));
    }

    @Test
    void hintsWhereNothingWasUnderstood() {
        ExpectedDrawing expected = DrawnSheets.aSheet(Tasks.boathouse(), "a.png", 1).expected();
        MeasuredSheet open = sheet(expected.values().stream()
                .map(value -> Measurement.uncertain(value.key(), MeasuredSheet.NOT_UNDERSTOOD))
                .toList());
        MeasuredSheet otherwise = sheet(expected.values().stream()
                .map(value -> Measurement.uncertain(value.key(), "the lines that it is measured from were not found"))
                .toList());

        assertThat(OtherTask.isLikely(open, marked(expected, open))).isTrue();
        assertThat(OtherTask.isLikely(otherwise, marked(expected, otherwise))).isFalse();
    }

    /** Measuring gives it in these words, as the bundle of reasons has them. */
    @Test
    void knowsTheReasonThatMeasuringGives() {
        assertThat(MeasuredSheet.NOT_UNDERSTOOD)
                .isEqualTo(ResourceBundle.getBundle("messages.reasons", Locale.ROOT).getString("fit.agree"));
        assertThat(Reasons.in(Locale.GERMAN).say(OtherTask.HINT)).contains("das Blatt einer anderen Aufgabe");
    }

    @Test
    void hintsOnceNotWhereTheCodeSaysTheTaskAndNoLongerWhereItFits() {
        AssessedSheet.Read sheet = DrawnSheets.aSheet(Tasks.boathouse(), "a.png", 1);
        ExpectedDrawing expected = sheet.expected();
        MeasuredSheet open = sheet(expected.values().stream()
                .map(value -> Measurement.uncertain(value.key(), MeasuredSheet.NOT_UNDERSTOOD))
                .toList());
        MarkedSheet marked = marked(expected, open);

        LevelPage once = OtherTask.noted(sheet.levelPage(), expected, open, marked);
        assertThat(once.warnings()).containsExactly(OtherTask.HINT);
        assertThat(OtherTask.noted(once, expected, open, marked).warnings()).containsExactly(OtherTask.HINT);
        assertThat(OtherTask.noted(coded(once, expected.task().id()), expected, open, marked).warnings()).isEmpty();
        assertThat(OtherTask.noted(coded(once, "another"), expected, open, marked).warnings())
                .containsExactly(OtherTask.HINT);
        assertThat(OtherTask.noted(once, expected, sheet.measured(), sheet.marked()).warnings()).isEmpty();
    }

    /** A millimetre's tolerance made a tenth of it leaves careful sheets those of the task. */
    @Test
    void asksNoMoreOfSizesWhereTheGuidelineIsStrict() {
        DrawingTask strict = Tasks.boathouse()
                .withMarking(Map.of("name", "strict", "tolerance", Map.of("length", 0.05, "thickness", 0.05, "angle", 0.05)));
        AssessedSheet.Read sheet = DrawnSheets.aSheet(Tasks.boathouse(), "a.png", 1);
        MeasuredSheet off = sheet(sheet.measured().measurements().stream()
                .map(each -> each.finding() instanceof Finding.Quantity drawn
                        ? Measurement.of(each.key(), new Finding.Quantity(drawn.value() + 0.3, 0.01))
                        : each)
                .toList());
        ExpectedDrawing expected = Solver.solve(strict);
        Guideline guideline = ((GuidelineReading.Accepted) Guideline.read(expected)).guideline();

        MarkedSheet marked = new Marker().mark(guideline, expected, off);

        assertThat(marked.awarded()).isLessThan(marked.available() / 2);
        assertThat(OtherTask.isLikely(off, marked)).isFalse();
    }

    private static MarkedSheet marked(ExpectedDrawing expected, MeasuredSheet measured) {
        return new Marker().mark(Guideline.defaultFor(expected), expected, measured);
    }

    private static MeasuredSheet sheet(List<Measurement> measurements) {
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }

    private static LevelPage coded(LevelPage page, String task) {
        return new LevelPage(
                page.ink(), page.toScan(), page.scanPixelsPerMm(), page.rotationDegrees(), page.photograph(),
                page.calibration(), page.bar(), page.warnings(), Optional.of(new SheetCode(task, "L01", 1)));
    }
}
