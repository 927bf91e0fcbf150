package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frames on A4 lying: 297 x 210 mm after ISO 216, with 10 mm margins and 20 mm for filing after ISO 5457. */
class PrintedFrameTest {

    private static final PrintedFrame FRAME = new PrintedFrame(297, 210);

    @ParameterizedTest
    @CsvSource({"277, 190", "267, 190"})
    void knowsFramesWithTheStandardsMargins(double width, double height) {
        assertThat(FRAME.uprightFactor(width, height, 0.01)).hasValueSatisfying(factor ->
                assertThat(factor).isCloseTo(1, within(1e-9)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.004, -0.002, 0.002, 0.004})
    void tellsAStretchByTheFramesProportions(double stretch) {
        assertThat(FRAME.uprightFactor(277, 190 * (1 + stretch), 0.01)).hasValueSatisfying(factor ->
                assertThat(factor).isCloseTo(1 / (1 + stretch), within(1e-9)));
    }

    /** The bar is known to a tenth of a millimetre only, so the frame's own size is off with it; proportions are not. */
    @Test
    void toleratesABarDrawnATenthOff() {
        assertThat(FRAME.uprightFactor(277 * 1.001, 190 * 1.001, 0.01)).hasValueSatisfying(factor ->
                assertThat(factor).isCloseTo(1, within(1e-9)));
    }

    @Test
    void saysNothingOfACrookedFrame() {
        assertThat(FRAME.uprightFactor(277, 190, 0.2)).isEmpty();
    }

    @Test
    void saysNothingWhereNoPrintedFrameFits() {
        assertThat(FRAME.uprightFactor(250, 180, 0.01)).isEmpty();
    }

    /** Halfway between two margins a whole millimetre apart. */
    @Test
    void saysNothingWhereTwoFramesFitAsWell() {
        assertThat(FRAME.uprightFactor(274.0, 187.5, 0.01)).isEmpty();
    }
}
