package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/** Another scale told from all sizes of a section that is asked for at 1:20, drawn with a stray of half a millimetre. */
class DrawnScaleTest {

    private static final double STRAY_MM = 0.5;

    private final ExpectedDrawing drawing = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private final Expectation asked = new Expectation(drawing);

    @ParameterizedTest
    @ValueSource(ints = {10, 15, 25, 30})
    void tellsAnotherScaleFromAllSizes(int scale) {
        double factor = 20.0 / scale;

        assertThat(new DrawnScale(asked, drawn(factor, Set.of())).another()).hasValueCloseTo(factor, within(1e-9));
    }

    @Test
    void findsNoneInADrawingAtTheScaleAskedFor() {
        assertThat(new DrawnScale(asked, drawn(1, Set.of())).another()).isEmpty();
        assertThat(new DrawnScale(asked.atScale(2.0 / 3), drawn(2.0 / 3, Set.of())).another()).isEmpty();
    }

    @Test
    void findsNoneWhereOnlySomeSizesWereMeasuredAtAnotherScale() {
        Findings findings = drawn(1, Set.of("rafter.overhang", "post.position", "support.spacing"));

        assertThat(new DrawnScale(asked, findings).another()).isEmpty();
    }

    /** What is found on a drawing so many times larger than asked, but for some keys at two thirds of their size. */
    private Findings drawn(double factor, Set<String> smaller) {
        Random stray = new Random(3);
        Findings findings = new Findings(
                DrawingView.of(ExactPage.of(drawing)).orElseThrow(), ExactPage.of(drawing).calibration());
        for (Expected value : drawing.values()) {
            if (value instanceof Expected.Length length) {
                double meant = length.exactMm() * (smaller.contains(length.key()) ? 2.0 / 3 : factor);
                findings.length(length.key(), meant + STRAY_MM * stray.nextGaussian(), 0.02);
            }
        }
        return findings;
    }
}
