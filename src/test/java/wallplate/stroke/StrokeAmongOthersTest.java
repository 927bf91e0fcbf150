package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/** Sides of small boxes between two lines, with diagonals, whose places are known. */
class StrokeAmongOthersTest {

    private static final long SEED = 20261129;
    private static final double BREADTH = 0.36;
    private static final double DARKNESS = 160;
    private static final double GRAIN = 0.2;
    private static final double NOISE = 4;
    private static final int TRIALS = 40;

    /** A box with its upright left side at x = 5 and its lower left corner at y = 5. */
    private record Box(double widthMm, double heightMm) {

        Segment left() {
            return Segment.between(5, 5, 5, 5 + heightMm);
        }

        List<Segment> others() {
            double right = 5 + widthMm;
            double top = 5 + heightMm;
            return List.of(
                    Segment.between(1, 5, 14, 5),
                    Segment.between(1, top, 14, top),
                    Segment.between(5, 5, right, top),
                    Segment.between(right, 5, 5, top));
        }
    }

    @ParameterizedTest
    @CsvSource({"2.5, 2.5", "1.9, 1.9", "1.5, 2.5", "2.5, 1.6"})
    void isNotDrawnToDiagonals(double widthMm, double heightMm) {
        Box box = new Box(widthMm, heightMm);
        double[] placed = IntStream.range(0, TRIALS)
                .mapToDouble(trial -> error(box, ink(box, trial), trial))
                .toArray();
        double bias = Arrays.stream(placed).average().orElseThrow();
        double fitted = IntStream.range(0, TRIALS)
                .mapToDouble(trial -> fitted(box, ink(box, trial)))
                .average()
                .orElseThrow();

        assertThat(Arrays.stream(placed).map(Math::abs).max().orElseThrow()).isLessThan(0.1);
        assertThat(Math.abs(bias)).isLessThan(0.02).isLessThan(0.5 * Math.abs(fitted));
    }

    @Test
    void saysNothingOfAStrokeThatLiesWhollyInOthersInk() {
        Box box = new Box(2, 2);
        Edge met = met(box, 0);
        List<Segment> covering =
                List.of(Segment.between(5, 3, 5, 9), Segment.between(5.4, 3, 5.4, 9), Segment.between(4.6, 3, 4.6, 9));

        assertThat(new StrokeAmongOthers(ink(box, 1), DARKNESS, BREADTH).place(met, covering)).isEmpty();
    }

    /** How far to the right of its true place the side is put. */
    private static double error(Box box, InkImage ink, int trial) {
        double met = 0.15 * new Random(SEED - trial).nextGaussian();
        Edge placed = new StrokeAmongOthers(ink, DARKNESS, BREADTH)
                .place(met(box, Math.max(-0.3, Math.min(0.3, met))), box.others())
                .orElseThrow();
        assertThat(placed.offsetSigmaMm()).isBetween(0.005, 0.1);
        return placed.middle().x() - 5;
    }

    /** The same by the centre of all ink, leaving out a quarter of the height at both ends. */
    private static double fitted(Box box, InkImage ink) {
        double trim = 0.25 * box.heightMm;
        Line side = new Line(new Point(5, 5), new Vector(0, 1));
        return new EdgeFit(ink, DARKNESS).fit(side, trim, box.heightMm - trim, 0.15, 0.2).middle().x() - 5;
    }

    private static Edge met(Box box, double offMm) {
        double half = box.heightMm / 2;
        Line line = new Line(new Point(5 + offMm, 5 + half), new Vector(0, 1));
        return new Edge(line, -half, half, 0.2, 0.05, DARKNESS, 1);
    }

    private static InkImage ink(Box box, int trial) {
        InkCanvas canvas = new InkCanvas(16, 14, 10, SEED + trial).stroke(box.left(), BREADTH, DARKNESS);
        canvas.stroke(Segment.between(5 + box.widthMm, 5, 5 + box.widthMm, 5 + box.heightMm), BREADTH, DARKNESS);
        box.others().forEach(other -> canvas.stroke(other, BREADTH, DARKNESS));
        return canvas.image(GRAIN, NOISE);
    }
}
