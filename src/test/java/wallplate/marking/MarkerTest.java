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

/** How measured values become verdicts under the default guideline. */
class MarkerTest {

    /** Tolerances of the default guideline: 1 mm; 0.5 mm for thickness, depth and width; 1 degree (interchange page). */
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
        Mark mark = mark(asked, drawn().uncertain("gutter.width", "Two lines lie close together.").sheet(), "gutter.width");
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
        ExpectedDrawing asked = asked().length("gutter.width", 125).yes("wall-plate.crossed").drawing();
        MeasuredSheet sheet = drawn().absent("gutter.width").absent("wall-plate.crossed").sheet();
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
        MeasuredSheet right =
                drawn().yes("support.crossed").count("support.count", 3).word("drawing.eaves", "left").sheet();
        MeasuredSheet wrong =
                drawn().no("support.crossed").count("support.count", 2).word("drawing.eaves", "right").sheet();
        assertThat(verdicts(asked, right)).containsOnly(Verdict.MET);
        assertThat(verdicts(asked, wrong)).containsOnly(Verdict.NOT_MET);
        assertThat(mark(asked, wrong, "drawing.eaves").slips()).containsExactly("mirrored");
    }

    @Test
    void namesTheSlipThatAWrongValueFits() {
        // 900 along the slope at 1:20 is 45; measured level at 26 degrees it comes out as 45 / cos 26 = 50.07.
        ExpectedDrawing asked = asked().length("support.spacing", 900)
                .slip("support.spacing", "spacing-level", 50.07)
                .slip("support.spacing", "spacing-clear", 47.5)
                .drawing();
        Mark mark = mark(asked, drawn().value("support.spacing", 50.2).sheet(), "support.spacing");
        assertThat(mark.slips()).containsExactly("spacing-level");
        assertThat(mark.feedback()).contains("It seems to be spacing-level.");
    }

    @Test
    void namesNoSlipForARightValue() {
        ExpectedDrawing asked = asked().length("support.spacing", 900)
                .slip("support.spacing", "spacing-level", 45.9)
                .drawing();
        assertThat(mark(asked, drawn().value("support.spacing", 45.8).sheet(), "support.spacing").slips())
                .isEmpty();
    }

    @Test
    void saysThatTwoSlipsFitRatherThanGuessing() {
        ExpectedDrawing asked = asked().length("rafter.depth", 150)
                .slip("rafter.depth", "depth-plumb", 9.0)
                .slip("rafter.depth", "another-part", 9.1)
                .drawing();
        Mark mark = mark(asked, drawn().value("rafter.depth", 9.05).sheet(), "rafter.depth");
        assertThat(mark.slips()).containsExactlyInAnyOrder("depth-plumb", "another-part");
        assertThat(mark.feedback()).contains("one of two things");
    }

    @Test
    void callsWidthAndDepthSwappedOnlyTogether() {
        ExpectedDrawing asked = asked().length("support.width", 50)
                .length("support.depth", 75)
                .slip("support.width", "width-depth-swapped", 3.75)
                .slip("support.depth", "width-depth-swapped", 2.5)
                .drawing();
        MeasuredSheet swapped = drawn().value("support.width", 3.8).value("support.depth", 2.4).sheet();
        MeasuredSheet onlyWide = drawn().value("support.width", 3.8).value("support.depth", 3.8).sheet();
        assertThat(mark(asked, swapped, "support.width").slips()).containsExactly("width-depth-swapped");
        assertThat(mark(asked, onlyWide, "support.width").slips()).isEmpty();
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
        return new Marker().mark(guideline(asked), asked, sheet).marks().stream().map(Mark::verdict).toList();
    }

    private static Mark mark(ExpectedDrawing asked, MeasuredSheet sheet, String key) {
        return new Marker().mark(guideline(asked), asked, sheet).mark(key.replace('.', '-')).orElseThrow();
    }

    private static Guideline guideline(ExpectedDrawing asked) {
        return ((GuidelineReading.Accepted) Guideline.read(asked)).guideline();
    }
}
