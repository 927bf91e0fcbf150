package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Where ink falls to half of its peak, on profiles worked out by hand. */
class HalfHeightTest {

    /** From 40 at the peak to 30 and 10: half of 40 lies half-way between these, a step and a half away. */
    @Test
    void fallsBetweenTwoValues() {
        double[] ink = {0, 5, 40, 30, 10, 0};

        assertThat(HalfHeight.stepsFrom(ink, 2, 1).orElseThrow()).isCloseTo(1.5, within(1e-12));
        // From 40 to 5 in one step: 20 / 35 of it.
        assertThat(HalfHeight.stepsFrom(ink, 2, -1).orElseThrow()).isCloseTo(20 / 35.0, within(1e-12));
    }

    @Test
    void aValueOfJustHalfIsWhereItFalls() {
        assertThat(HalfHeight.stepsFrom(new double[] {40, 30, 20, 0}, 0, 1).orElseThrow()).isCloseTo(2, within(1e-12));
    }

    @Test
    void isNowhereWhereTheProfileEndsBefore() {
        assertThat(HalfHeight.stepsFrom(new double[] {0, 40, 30, 25}, 1, 1)).isEmpty();
    }

    @Test
    void isNowhereWithoutInk() {
        assertThat(HalfHeight.stepsFrom(new double[] {0, 0, 0}, 1, 1)).isEmpty();
    }
}
