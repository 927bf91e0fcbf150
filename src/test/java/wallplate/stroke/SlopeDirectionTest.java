package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** The slope of a roof among level and upright lines, hatching and noise. */
class SlopeDirectionTest {

    private static final long SEED = 815;
    private static final double WITHIN_DEGREES = 0.1;

    @ParameterizedTest
    @ValueSource(doubles = {12.3, -12.3, 18, -18, 22.5, -22.5, 26.07, -26.07, 35, -35, 40.4, -40.4, 52, -52})
    void findsTheSlopeEitherHand(double slope) {
        System.out.println("seed " + SEED);
        Random random = new Random(SEED);
        assertThat(SlopeDirection.candidates(roof(slope, random).image(0.25, 4), 6, 79).get(0))
                .isCloseTo(slope, within(WITHIN_DEGREES));
    }

    @Test
    void findsTheSlopeBesideHatching() {
        System.out.println("seed " + SEED);
        InkCanvas canvas = roof(27, new Random(SEED));
        for (double x = 30; x < 45; x += 2) {
            canvas.stroke(Segment.between(x, 20, x + 10, 30), 0.2, 110);
        }
        assertThat(SlopeDirection.candidates(canvas.image(0.25, 4), 6, 79).get(0)).isCloseTo(27, within(WITHIN_DEGREES));
    }

    /** Four sloping lines as of a rafter and its covering, level lines of a beam and upright ones of a wall. */
    private static InkCanvas roof(double slope, Random random) {
        InkCanvas canvas = new InkCanvas(180, 150, 10, random.nextLong());
        Line rafter = Line.at(new Point(90, 85), slope);
        for (double offset : new double[] {0, 7.5, 11.25, 13.25}) {
            canvas.stroke(rafter.offset(offset).between(-60, 60), 0.35, 130);
        }
        for (double y : new double[] {60, 67.5, 57.5}) {
            canvas.stroke(Segment.between(40, y, 150, y), 0.35, 130);
        }
        for (double x : new double[] {50, 61.5}) {
            canvas.stroke(Segment.between(x, 15, x, 57), 0.35, 130);
        }
        return canvas;
    }
}
