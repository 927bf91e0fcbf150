package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.InkImage;

/** Strokes found on ink whose every line is known. */
class StrokeFinderTest {

    private static final long SEED = 4711;
    private static final double GRAIN = 0.25;
    private static final double NOISE = 4;
    private static final double END_WITHIN_MM = 0.6;

    private final StrokeFinder finder = new StrokeFinder(StrokeSettings.usual());

    @ParameterizedTest
    @ValueSource(doubles = {0, 18, 26, 45, 70, 90})
    void findsOneStrokeForEachLine(double direction) {
        Random random = seeded();
        for (int trial = 0; trial < 5; trial++) {
            InkCanvas canvas = new InkCanvas(100, 100, 10, random.nextLong());
            Segment[] drawn = new Segment[4];
            for (int index = 0; index < drawn.length; index++) {
                double length = 12 + 40 * random.nextDouble();
                double turned = direction + 0.6 * random.nextDouble() - 0.3;
                Line line = Line.at(new Point(50, 50), turned).offset(8.0 * index - 12 + random.nextDouble());
                double start = -length / 2 + 10 * random.nextDouble() - 5;
                drawn[index] = line.between(start, start + length);
                canvas.stroke(drawn[index], 0.25 + 0.4 * random.nextDouble(), 60 + 120 * random.nextDouble());
            }
            List<Stroke> found = finder.find(canvas.image(GRAIN, NOISE), direction);
            assertThat(found).as("direction %s, trial %d", direction, trial).hasSize(drawn.length);
            for (Segment line : drawn) {
                assertThat(found).as("direction %s, trial %d", direction, trial).anySatisfy(stroke -> assertSame(stroke, line));
            }
        }
    }

    @Test
    void findsOneStrokeForABrokenLine() {
        Segment line = Segment.between(20, 40, 80, 40.2);
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong())
                .broken(line, 0.35, 120, 4, 1.5)
                .image(GRAIN, NOISE);
        List<Stroke> found = finder.find(ink, 0);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).coverage()).isBetween(0.6, 0.95);
        assertThat(found.get(0).length()).isBetween(57.0, 60.8);
    }

    @Test
    void findsOneStrokeForALineGoneOverTwice() {
        Segment first = Segment.between(20, 40, 80, 40);
        Segment second = Segment.between(22, 40.3, 79, 40.3);
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong())
                .stroke(first, 0.3, 120)
                .stroke(second, 0.3, 120)
                .image(GRAIN, NOISE);
        assertThat(finder.find(ink, 0)).hasSize(1);
    }

    /** Parallel lines are drawn at least 0.7 mm apart (ISO 128, as restated in teaching texts). */
    @Test
    void findsTwoStrokesForTwoLinesSevenTenthsApart() {
        Segment first = Segment.between(20, 40, 80, 40);
        Segment second = Segment.between(20, 40.7, 80, 40.7);
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong())
                .stroke(first, 0.3, 120)
                .stroke(second, 0.3, 120)
                .image(GRAIN, NOISE);
        List<Stroke> found = finder.find(ink, 0);
        assertThat(found).hasSize(2);
        assertThat(found).anySatisfy(stroke -> assertSame(stroke, first));
        assertThat(found).anySatisfy(stroke -> assertSame(stroke, second));
    }

    @Test
    void findsNothingOnGrainyPaper() {
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong()).image(0, 6);
        assertThat(finder.find(ink, 0)).isEmpty();
        assertThat(finder.find(ink, 26)).isEmpty();
    }

    @Test
    void doesNotTakeALineInAnotherDirection() {
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong())
                .stroke(Segment.between(20, 20, 80, 60), 0.35, 140)
                .image(GRAIN, NOISE);
        assertThat(finder.find(ink, 0)).isEmpty();
        assertThat(finder.find(ink, 90)).isEmpty();
    }

    @Test
    void givesTheLongestFirst() {
        InkImage ink = new InkCanvas(100, 80, 10, seeded().nextLong())
                .stroke(Segment.between(20, 20, 40, 20), 0.35, 140)
                .stroke(Segment.between(20, 30, 70, 30), 0.35, 140)
                .stroke(Segment.between(20, 40, 50, 40), 0.35, 140)
                .image(GRAIN, NOISE);
        List<Stroke> found = finder.find(ink, 0);
        assertThat(found).hasSize(3).isSortedAccordingTo((a, b) -> Double.compare(b.length(), a.length()));
    }

    private static void assertSame(Stroke stroke, Segment line) {
        Segment seen = stroke.centreLine();
        double straight = Math.max(seen.start().distanceTo(line.start()), seen.end().distanceTo(line.end()));
        double turned = Math.max(seen.start().distanceTo(line.end()), seen.end().distanceTo(line.start()));
        assertThat(Math.min(straight, turned)).as("ends of %s against %s", seen, line).isLessThan(END_WITHIN_MM);
        assertThat(line.distanceTo(seen.midpoint())).as("middle").isLessThan(0.1);
    }

    private static Random seeded() {
        System.out.println("seed " + SEED);
        return new Random(SEED);
    }
}
