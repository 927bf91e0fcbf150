package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.marking.Drawn.drawn;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Scale;

/** When a whole sheet counts as drawn at another scale. */
class DrawnScaleTest {

    private static final ExpectedDrawing ASKED = Solver.solve(Asked.boathouse());

    @ParameterizedTest
    @CsvSource({"10", "15", "25", "30", "50"})
    void tellsTheScaleOfASheetDrawnAtAnother(double scale) {
        assertThat(new DrawnScale(ASKED, drawnAt(scale)).otherThanAsked()).contains(new Scale(scale));
    }

    @Test
    void namesNoScaleForARightSheet() {
        assertThat(new DrawnScale(ASKED, drawnAt(20)).otherThanAsked()).isEmpty();
    }

    @Test
    void namesNoScaleWhereOnlySomeLengthsFitIt() {
        Drawn sheet = drawn();
        int index = 0;
        for (Expected.Length length : lengths()) {
            sheet.value(length.key(), index++ % 2 == 0 ? length.realMm() / 30 : length.exactMm());
        }
        assertThat(new DrawnScale(ASKED, sheet.sheet()).otherThanAsked()).isEmpty();
    }

    @Test
    void marksEveryLengthOfSuchASheetAsTheOneSlip() {
        MarkedSheet marked = new Marker().mark(Guideline.defaultFor(ASKED), ASKED, drawnAt(30));
        Mark spacing = marked.mark("support-spacing").orElseThrow();
        assertThat(spacing.slips()).containsExactly("wrong-scale");
        assertThat(spacing.feedback()).contains("30 mm").contains("1:30").contains("45 mm");
        // 150 / 30 = 5 lies within half a millimetre of no right tie beam, and would fit "half the size" of nothing
        assertThat(marked.mark("tie-beam-depth").orElseThrow().slips()).containsExactly("wrong-scale");
    }

    private static List<Expected.Length> lengths() {
        return ASKED.values().stream()
                .filter(value -> value instanceof Expected.Length length && length.exactMm() > 0)
                .map(value -> (Expected.Length) value)
                .toList();
    }

    private static MeasuredSheet drawnAt(double scale) {
        Drawn sheet = drawn();
        lengths().forEach(length -> sheet.value(length.key(), length.realMm() / scale));
        return sheet.sheet();
    }
}
