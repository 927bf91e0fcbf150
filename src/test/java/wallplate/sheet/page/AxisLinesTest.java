package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

class AxisLinesTest {

    @Test
    void offersTheRoofsDirectionAndTheTSquaresWhereEitherMayBeTheLevel() {
        List<Segment> segments = new ArrayList<>(lines(-8, 8, 190));
        segments.addAll(lines(3, 2, 100));
        segments.addAll(lines(93, 4, 40));

        List<Double> tilts = AxisLines.tilts(segments);

        assertThat(tilts).hasSize(2);
        assertThat(tilts.get(0)).isCloseTo(-8, within(0.1));
        assertThat(tilts.get(1)).isCloseTo(3, within(0.1));
    }

    @Test
    void offersOneDirectionWhereHardlyAnythingElseRunsNearIt() {
        List<Segment> segments = new ArrayList<>(lines(1, 8, 100));
        segments.addAll(lines(91, 8, 60));
        segments.addAll(lines(-6, 1, 5));

        assertThat(AxisLines.tilts(segments)).singleElement().satisfies(tilt -> assertThat(tilt).isCloseTo(1, within(0.1)));
    }

    private static List<Segment> lines(double degrees, int count, double length) {
        List<Segment> lines = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point start = new Point(30 + i, 40 + 12 * i);
            lines.add(new Segment(start, start.plus(Vector.atDegrees(degrees).times(length))));
        }
        return lines;
    }
}
