package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.marking.Drawn.drawn;

import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/** How a sheet is marked that was drawn at another scale throughout. */
class WholeSheetScaleTest {

    private static final ExpectedDrawing ASKED = Solver.solve(Asked.boathouse());

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
