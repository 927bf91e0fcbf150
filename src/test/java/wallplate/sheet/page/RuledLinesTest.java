package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.page.FormulaScan.stroke;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;

/** Which lines of a scan may say how the T-square lay. */
class RuledLinesTest {

    private static final double WIDTH = 150;
    private static final double SLOPE = Math.tan(Math.toRadians(0.05));

    /** Dust on a feeder's sensor leaves a streak along the picture's own pixels, however the sheet was turned under it. */
    @Test
    void leavesOutWhatRunsAlongOneRowOfPixels() {
        DoubleBinaryOperator streak = (x, y) -> stroke(y - 21.002, 0.2);
        DoubleBinaryOperator line = (x, y) -> x > 10 && x < 140 ? stroke(y - 9 - SLOPE * (x - 10), 0.2) : 0;
        LineRefit refit = FormulaScan.refit(
                WIDTH, (x, y) -> Math.max(streak.applyAsDouble(x, y), line.applyAsDouble(x, y)));
        AxisLines found = new AxisLines(
                0,
                List.of(
                        refit.fit(Segment.between(5, 21, 145, 21)).orElseThrow(),
                        refit.fit(Segment.between(12, 9, 138, 9.1)).orElseThrow()),
                List.of());

        List<RuledLine> ruled = RuledLines.measured(found, refit).alongX();

        assertThat(ruled).hasSize(1);
        assertThat(ruled.get(0).segment().inclinationDegrees()).isCloseTo(0.05, within(0.005));
    }
}
