package wallplate.sheet.opencv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.sheet.InkImage;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.PaperMask;

/** Pages whose light, strokes and shine are formulas, so that the ink is known everywhere. */
class InkFlatteningTest {

    private static final double WIDTH = 120;
    private static final double HEIGHT = 60;
    private static final double PIXELS_PER_MM = 10;
    private static final double PAPER = 225;
    private static final double LINE = 30.05;
    private static final double HALF_STROKE = 0.22;

    /** Shares of the paper's light that strokes take, chosen to reach from fainter than 2H to darker than 2B. */
    @ParameterizedTest
    @ValueSource(doubles = {0.12, 0.2, 0.35, 0.5, 0.7})
    void keepsPencilsFromHardToSoft(double darkness) {
        InkImage ink = flattened((x, y) -> PAPER * (1 - stroke(y - LINE, darkness)), false);

        assertThat(ink.at(40, LINE)).isCloseTo(255 * darkness, within(255 * darkness * 0.12 + 3));
        assertThat(ink.at(40, 20)).isLessThan(4);
    }

    /** A lined-in stroke and a construction line a third as dark, from the lit side of the page into a soft shadow. */
    @Test
    void givesALineTheSameInkInLightAndShadow() {
        InkImage ink = flattened(
                (x, y) -> PAPER
                        * (1 - 0.5 * shade((x - 60) / 8))
                        * (1 - Math.max(stroke(y - LINE, 0.6), stroke(y - 15.05, 0.2))),
                true);

        for (double x : new double[] {10, 35, 85, 110}) {
            assertThat(ink.at(x, LINE)).as("outline at %.0f", x).isCloseTo(0.6 * 255, within(12.0));
            assertThat(ink.at(x, 15.05)).as("construction line at %.0f", x).isCloseTo(0.2 * 255, within(8.0));
        }
    }

    /** Between 40 and 80 mm the stroke mirrors the lamp: brighter than the paper between two dark rims. */
    @Test
    void makesOneStrokeOfGraphiteThatShinesBetweenDarkRims() {
        InkImage ink = flattened(InkFlatteningTest::shining, true);

        for (double x = 42; x < 79; x += 1.5) {
            assertThat(ink.at(x, LINE)).as("ink in the middle of the stroke at %.1f", x).isGreaterThan(60);
            assertThat(dips(ink, x)).as("light between the rims at %.1f", x).isFalse();
            assertThat(centre(ink, x)).as("centre at %.1f", x).isCloseTo(LINE, within(0.04));
        }
        assertThat(ink.at(20, LINE)).isGreaterThan(100);
    }

    /** A scanner's lamp is never mirrored: two lines that lie close stay two. */
    @Test
    void leavesTheGapBetweenTwoLinesOfAScan() {
        InkImage ink = flattened(InkFlatteningTest::shining, false);

        assertThat(ink.at(60, LINE)).isLessThan(10);
    }

    /** Two lines as close as the sides of a thin board, on paper with grain, some of which is brighter than its surroundings. */
    @Test
    void leavesTheGrainyGapBetweenTwoLinesOfAPhotograph() {
        Random grain = new Random(7);

        InkImage ink = flattened(
                (x, y) -> PAPER
                        * (1 + 0.025 * grain.nextGaussian())
                        * (1 - Math.max(stroke(y - LINE - 0.3, 0.5, 0.15), stroke(y - LINE + 0.3, 0.5, 0.15))),
                true);

        for (double x = 10; x < 110; x += 2.5) {
            assertThat(dips(ink, x)).as("light between the lines at %.1f", x).isTrue();
        }
    }

    private static double shining(double x, double y) {
        double off = Math.abs(y - LINE);
        boolean mirrors = x > 40 && x < 80;
        if (!mirrors) {
            return PAPER * (1 - stroke(off, 0.5));
        }
        return off < 0.12 ? PAPER * 1.1 : PAPER * (1 - stroke(off - 0.22, 0.5, 0.1));
    }

    private static boolean dips(InkImage ink, double x) {
        double rims = Math.min(ink.at(x, LINE - 0.2), ink.at(x, LINE + 0.2));
        return ink.at(x, LINE) < 0.6 * rims;
    }

    private static double centre(InkImage ink, double x) {
        double sum = 0;
        double moment = 0;
        for (double off = -1; off <= 1; off += 0.02) {
            double here = ink.at(x, LINE + off);
            sum += here;
            moment += here * off;
        }
        return LINE + moment / sum;
    }

    private static double shade(double at) {
        return 1 / (1 + Math.exp(-at));
    }

    private static double stroke(double off, double darkness) {
        return stroke(off, darkness, HALF_STROKE);
    }

    private static double stroke(double off, double darkness, double half) {
        double soft = 0.06;
        return darkness * 0.5 * (Math.tanh((off + half) / soft) - Math.tanh((off - half) / soft));
    }

    private static InkImage flattened(DoubleBinaryOperator grey, boolean graphiteShines) {
        int width = (int) (WIDTH * PIXELS_PER_MM);
        int height = (int) (HEIGHT * PIXELS_PER_MM);
        byte[] bytes = new byte[width * height];
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                double value = grey.applyAsDouble((column + 0.5) / PIXELS_PER_MM, (height - row - 0.5) / PIXELS_PER_MM);
                bytes[row * width + column] = (byte) Math.round(Math.min(255, value));
            }
        }
        return InkFlattening.flatten(
                new GreyPage(width, height, PIXELS_PER_MM, bytes),
                new PaperMask(List.of(), 0, List.of(), false),
                graphiteShines);
    }
}
