package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.stroke.InkCanvas;
import wallplate.stroke.Stroke;
import wallplate.stroke.StrokeFinder;
import wallplate.stroke.StrokeSettings;

/** Outlines drawn over construction lines. */
class RunTest {

    private static final double OUTLINE = 150;
    private static final double CONSTRUCTION = 50;
    private static final double LEAST_INK = 80;
    private static final double END_WITHIN_MM = 1.3;

    @Test
    void takesAwayTheConstructionLine() {
        List<Run> runs = Run.of(stroke(Segment.between(40, 30, 75, 30)), LEAST_INK);
        assertThat(runs).hasSize(1);
        assertThat(runs.get(0).segment().start().x()).isCloseTo(40, within(END_WITHIN_MM));
        assertThat(runs.get(0).segment().end().x()).isCloseTo(75, within(END_WITHIN_MM));
        assertThat(runs.get(0).ink()).isGreaterThan(LEAST_INK);
    }

    @Test
    void keepsTwoOutlinesOnOneConstructionLineApart() {
        List<Run> runs = Run.of(
                stroke(Segment.between(20, 30, 40, 30), Segment.between(55, 30, 80, 30)), LEAST_INK);
        assertThat(runs).hasSize(2);
        assertThat(runs.get(0).length()).isCloseTo(20, within(2 * END_WITHIN_MM));
        assertThat(runs.get(1).length()).isCloseTo(25, within(2 * END_WITHIN_MM));
    }

    @Test
    void findsNoOutlineInAConstructionLine() {
        assertThat(Run.of(stroke(), LEAST_INK)).isEmpty();
    }

    /** One stroke: a construction line over the whole width, and the outlines on it. */
    private static Stroke stroke(Segment... outlines) {
        InkCanvas canvas = new InkCanvas(100, 60, 10, 7).stroke(Segment.between(10, 30, 90, 30), 0.25, CONSTRUCTION);
        for (Segment outline : outlines) {
            canvas.stroke(outline, 0.35, OUTLINE - CONSTRUCTION);
        }
        List<Stroke> found = new StrokeFinder(StrokeSettings.usual()).find(canvas.clean(), 0);
        assertThat(found).hasSize(1);
        return found.get(0);
    }
}
