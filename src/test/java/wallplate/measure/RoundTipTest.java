package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/**
 * The free end of an upright at x = 5 mm that a round point drew from y = 5 mm to y = 12 mm, blurred as a scan blurs it. The
 * ink of a disc at the end of a band under a Gaussian is worked out here for each pixel by itself.
 */
class RoundTipTest {

    private static final int WIDTH_PX = 100;
    private static final int HEIGHT_PX = 160;
    private static final double BLUR_MM = 0.12;
    private static final double FINE_MM = 0.02;

    @ParameterizedTest
    @CsvSource({"0.3, 0", "0.4, 0", "0.5, 0", "0.4, 40"})
    void findsHowFarTheMiddleOfThePointCame(double breadthMm, int inkAbove) {
        double reached = tip(page(breadthMm, inkAbove, 0)).near(12.1).orElseThrow();

        assertThat(reached).isCloseTo(12, within(0.06));
    }

    @Test
    void bearsWithAPatchOfLightGraphiteAtTheEnd() {
        double reached = tip(page(0.4, 0, 0.45)).near(11.9).orElseThrow();

        assertThat(reached).isCloseTo(12, within(0.08));
    }

    @Test
    void tellsNothingOfALineTooShortToHaveABreadth() {
        assertThat(tip(page(0.4, 0, 0)).near(6)).isEmpty();
    }

    private static RoundTip tip(InkImage page) {
        return new RoundTip(page, new Edge(new Line(new Point(5, 8.5), Level.UP), -3, 3, 0.01, 0.02, 180, 1), 5);
    }

    /** @param lighter by what share the last millimetre of the line is lighter than the rest */
    private static InkImage page(double breadthMm, int inkAbove, double lighter) {
        byte[] ink = new byte[WIDTH_PX * HEIGHT_PX];
        for (int row = 0; row < HEIGHT_PX; row++) {
            for (int column = 40; column < 60; column++) {
                double x = (column + 0.5) / 10 - 5;
                double y = (HEIGHT_PX - row - 0.5) / 10;
                ink[row * WIDTH_PX + column] = (byte) Math.round(blurred(x, y, breadthMm / 2, inkAbove, lighter));
            }
        }
        return new InkImage(WIDTH_PX, HEIGHT_PX, 10, ink);
    }

    private static double blurred(double x, double y, double half, int inkAbove, double lighter) {
        double sum = 0;
        double weights = 0;
        for (double dx = -3 * BLUR_MM; dx <= 3 * BLUR_MM; dx += FINE_MM) {
            for (double dy = -3 * BLUR_MM; dy <= 3 * BLUR_MM; dy += FINE_MM) {
                double weight = Math.exp(-(dx * dx + dy * dy) / (2 * BLUR_MM * BLUR_MM));
                weights += weight;
                sum += weight * drawn(x + dx, y + dy, half, inkAbove, lighter);
            }
        }
        return sum / weights;
    }

    private static double drawn(double x, double y, double half, int inkAbove, double lighter) {
        boolean isOnLine = Math.abs(x) < half && y > 5 && y < 12;
        if (isOnLine || Math.hypot(x, y - 12) < half) {
            return y > 11 ? 180 * (1 - lighter) : 180;
        }
        return Math.abs(x) < half && y >= 12 ? inkAbove : 0;
    }
}
