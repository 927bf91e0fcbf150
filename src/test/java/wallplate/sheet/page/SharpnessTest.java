package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.sheet.InkImage;

/** Pages whose ink is a formula: lines of a known blur, smudges and nothing. */
class SharpnessTest {

    private static final int SIDE = 400;
    private static final double PIXELS_PER_MM = 4;

    @ParameterizedTest
    @ValueSource(doubles = {0.15, 0.3, 0.5})
    void readableLinesAreSharp(double sigma) {
        assertThat(Sharpness.isBlurred(page(lines(sigma)))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.0, 1.2, 1.5})
    void shadesInPlaceOfLinesAreBlurred(double sigma) {
        assertThat(Sharpness.isBlurred(page(lines(sigma)))).isTrue();
    }

    @Test
    void smudgesOnAnEmptyPageAreNoBlur() {
        assertThat(Sharpness.isBlurred(page((x, y) -> 60 * bell(Math.hypot(x - 50, y - 50), 9)))).isFalse();
    }

    @Test
    void anEmptyPageIsNotBlurred() {
        assertThat(Sharpness.isBlurred(page((x, y) -> 0))).isFalse();
    }

    /** Level and upright lines 14 mm apart, as dark over all whatever their breadth. */
    private static DoubleBinaryOperator lines(double sigma) {
        return (x, y) -> Math.min(255, 45 / sigma * (bell(off(x), sigma) + bell(off(y), sigma)));
    }

    private static double off(double place) {
        return place - 14 * Math.round(place / 14);
    }

    private static double bell(double distance, double sigma) {
        return Math.exp(-0.5 * distance * distance / (sigma * sigma));
    }

    private static InkImage page(DoubleBinaryOperator ink) {
        byte[] bytes = new byte[SIDE * SIDE];
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                bytes[y * SIDE + x] = (byte) Math.round(ink.applyAsDouble(x / PIXELS_PER_MM, y / PIXELS_PER_MM));
            }
        }
        return new InkImage(SIDE, SIDE, PIXELS_PER_MM, bytes);
    }
}
