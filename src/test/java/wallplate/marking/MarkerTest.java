package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.marking.Asked.asked;
import static wallplate.marking.Drawn.drawn;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/** How measured values become verdicts under the default guideline. */
class MarkerTest {

    /**
     * Tolerances of the default guideline: 1 mm; 0.5 mm for thickness, depth and width; 1 degree (interchange page).
     */
    @ParameterizedTest
    @CsvSource({
        "roof.pitch, 26.9, met",
        "roof.pitch, 27.0, met",
        "roof.pitch, 27.1, not-met",
        "roof.pitch, 24.9, not-met",
        "rafter.overhang, 20.9, met",
        "rafter.overhang, 18.9, not-met",
        "tie-beam.depth, 8.0, met",
        "tie-beam.depth, 8.1, met",
        // 150 / 20 = 7.5, commonly drawn 8: up to 8.5 counts
        "tie-beam.depth, 8.5, met",
        "tie-beam.depth, 8.6, not-met",
        "tie-beam.depth, 7.0, met",
        "tie-beam.depth, 6.9, not-met"
    })
    void judgesAValueByTheToleranceOfItsKey(String key, double value, String verdict) {
        ExpectedDrawing asked = asked().angle("roof.pitch", 26)
                .length("rafter.overhang", 400)
                .length("tie-beam.depth", 150)
                .drawing();
        Mark mark = mark(asked, drawn().value(key, value).sheet(), key);
        assertThat(mark.verdict().word()).isEqualTo(verdict);
        assertThat(mark.awarded()).isEqualTo(verdict.equals("met") ? 1 : 0);
    }

    @Test
    void leavesAnUncertainKeyToTheTeacherWithTheReason() {
        ExpectedDrawing asked = asked().length("gutter.width", 125).drawing();
        Mark mark = mark(
                asked,
                drawn().uncertain("gutter.width", "Two lines lie close together.")
                        .sheet(),
                "gutter.width");
        assertThat(mark.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(mark.awarded()).isZero();
        assertThat(mark.feedback()).contains("Two lines lie close together.");
    }

    @Test
    void leavesAKeyThatWasNotMeasuredToTheTeacher() {
        ExpectedDrawing asked = asked().length("gutter.width", 125).drawing();
        assertThat(mark(asked, drawn().sheet(), "gutter.width").verdict()).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void givesNoMarkForAPartThatIsNotDrawn() {
        ExpectedDrawing asked =
                asked().length("gutter.width", 125).yes("wall-plate.crossed").drawing();
        MeasuredSheet sheet =
                drawn().absent("gutter.width").absent("wall-plate.crossed").sheet();
        assertThat(mark(asked, sheet, "gutter.width").verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(mark(asked, sheet, "gutter.width").feedback()).contains("not on your drawing yet");
        assertThat(mark(asked, sheet, "wall-plate.crossed").verdict()).isEqualTo(Verdict.NOT_MET);
    }

    @Test
    void judgesCrossingCountsAndTheSideOfTheEaves() {
        ExpectedDrawing asked = asked().yes("support.crossed")
                .count("support.count", 3)
                .word("drawing.eaves", "left")
                .drawing();
        MeasuredSheet right = drawn().yes("support.crossed")
                .count("support.count", 3)
                .word("drawing.eaves", "left")
                .sheet();
        MeasuredSheet wrong = drawn().no("support.crossed")
                .count("support.count", 2)
                .word("drawing.eaves", "right")
                .sheet();
        assertThat(verdicts(asked, right)).containsOnly(Verdict.MET);
        assertThat(verdicts(asked, wrong)).containsOnly(Verdict.NOT_MET);
        assertThat(mark(asked, wrong, "drawing.eaves").slips()).containsExactly("mirrored");
    }

    @Test
    void namesTheSlipThatAWrongValueFits() {
        // 400 / 20 = 20 set off along a rafter at 26 degrees is 20 cos 26 = 17.98 measured level.
        ExpectedDrawing asked =
                asked().angle("roof.pitch", 26).length("rafter.overhang", 400).drawing();
        MeasuredSheet sheet =
                drawn().value("roof.pitch", 26).value("rafter.overhang", 18.0).sheet();
        Mark mark = mark(asked, sheet, "rafter.overhang");
        assertThat(mark.slips()).containsExactly("overhang-along-slope");
        assertThat(mark.feedback()).contains("along the rafter");
    }

    @Test
    void namesNoSlipForARightValue() {
        ExpectedDrawing asked = asked().length("rafter.overhang", 400).drawing();
        assertThat(mark(asked, drawn().value("rafter.overhang", 19.1).sheet(), "rafter.overhang")
                        .slips())
                .isEmpty();
    }

    @Test
    void callsWidthAndDepthSwappedOnlyTogether() {
        ExpectedDrawing asked =
                asked().length("gutter.width", 140).length("gutter.depth", 100).drawing();
        MeasuredSheet swapped =
                drawn().value("gutter.width", 5.1).value("gutter.depth", 6.9).sheet();
        MeasuredSheet onlyNarrow =
                drawn().value("gutter.width", 5.1).value("gutter.depth", 5.1).sheet();
        assertThat(mark(asked, swapped, "gutter.width").slips()).containsExactly("width-depth-swapped");
        assertThat(mark(asked, onlyNarrow, "gutter.width").slips()).doesNotContain("width-depth-swapped");
    }

    @Test
    void creditsWhatFollowsFromAWrongSizeAsConsistentWorking() {
        // Purlins 75 deep are 3.75 on paper; drawn 6.0, the covering rightly lies 6.0 above the rafter.
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        MeasuredSheet consistent =
                drawn().value("support.depth", 6.0).value("covering.gap", 6.1).sheet();
        MeasuredSheet inconsistent =
                drawn().value("support.depth", 6.0).value("covering.gap", 8.2).sheet();
        MeasuredSheet causeRight =
                drawn().value("support.depth", 3.8).value("covering.gap", 6.1).sheet();
        assertThat(mark(asked, consistent, "support.depth").verdict()).isEqualTo(Verdict.NOT_MET);
        Mark carried = mark(asked, consistent, "covering.gap");
        assertThat(carried.verdict()).isEqualTo(Verdict.CARRIED);
        assertThat(carried.awarded()).isEqualTo(1);
        assertThat(carried.feedback()).contains("Purlin depth").contains("consistent working");
        assertThat(mark(asked, inconsistent, "covering.gap").verdict()).isEqualTo(Verdict.NOT_MET);
        assertThat(mark(asked, causeRight, "covering.gap").verdict()).isEqualTo(Verdict.NOT_MET);
    }

    @Test
    void creditsNoConsistentWorkingWhereTheGuidelineSwitchesItOff() {
        ExpectedDrawing asked = Solver.solve(Asked.withMarking(Asked.boathouse(), Map.of("consistent-working", false)));
        MeasuredSheet sheet =
                drawn().value("support.depth", 6.0).value("covering.gap", 6.1).sheet();
        assertThat(mark(asked, sheet, "covering.gap").verdict()).isEqualTo(Verdict.NOT_MET);
    }

    @Test
    void leavesAValueAtTheEdgeToTheTeacherWhereTheGuidelineSaysSo() {
        ExpectedDrawing asked = asked().length("rafter.overhang", 400)
                .marking(Map.of("borderline", 2))
                .drawing();
        MeasuredSheet atTheEdge = drawn().value("rafter.overhang", 21.05, 0.1).sheet();
        MeasuredSheet beyond = drawn().value("rafter.overhang", 21.3, 0.1).sheet();
        assertThat(mark(asked, atTheEdge, "rafter.overhang").verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(mark(asked, beyond, "rafter.overhang").verdict()).isEqualTo(Verdict.NOT_MET);
    }

    private static java.util.List<Verdict> verdicts(ExpectedDrawing asked, MeasuredSheet sheet) {
        return new Marker()
                .mark(guideline(asked), asked, sheet).marks().stream()
                        .map(Mark::verdict)
                        .toList();
    }

    private static Mark mark(ExpectedDrawing asked, MeasuredSheet sheet, String key) {
        return new Marker()
                .mark(guideline(asked), asked, sheet)
                .mark(key.replace('.', '-'))
                .orElseThrow();
    }

    private static Guideline guideline(ExpectedDrawing asked) {
        return ((GuidelineReading.Accepted) Guideline.read(asked)).guideline();
    }
}
