package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/** The free upper end of an upright that stands at x = 5 mm on a level line at y = 5 mm and is drawn up to y = 12 mm. */
class UprightEndsTest {

    private static final int WIDTH_PX = 200;
    private static final int HEIGHT_PX = 300;
    private static final Edge UPRIGHT = new Edge(new Line(new Point(5, 8.5), Level.UP), -3, 3, 0.01, 0.02, 180, 1);

    @Test
    void findsWhereTheLineStops() {
        UprightEnds ends = new UprightEnds(page(0, Double.NaN), UPRIGHT, 5);

        UprightEnds.End best = ends.ends().get(0);
        assertThat(best.parted()).isZero();
        assertThat(ends.refined(best).yMm()).isCloseTo(12 - UprightEnds.ROUND_END_MM, within(0.08));
    }

    @Test
    void bearsWithAConstructionLineThatRunsOn() {
        UprightEnds ends = new UprightEnds(page(50, Double.NaN), UPRIGHT, 5);

        assertThat(ends.refined(ends.ends().get(0)).yMm()).isCloseTo(12 - UprightEnds.ROUND_END_MM, within(0.08));
    }

    @Test
    void namesAGapInTheLeadAsAnotherPossibleEnd() {
        UprightEnds ends = new UprightEnds(page(0, 8), UPRIGHT, 5);

        assertThat(ends.ends().get(0).yMm()).isCloseTo(12 - UprightEnds.ROUND_END_MM, within(0.15));
        assertThat(ends.ends()).anySatisfy(end -> assertThat(end.yMm()).isBetween(7.0, 9.5));
    }

    /** The upright, 0.3 mm broad, with fainter ink above its end and a gap of 1 mm at a height. */
    private static InkImage page(int inkAbove, double gapY) {
        byte[] ink = new byte[WIDTH_PX * HEIGHT_PX];
        for (int row = 0; row < HEIGHT_PX; row++) {
            double y = (HEIGHT_PX - row - 0.5) / 10;
            boolean isDrawn = y > 5 && y < 12 && !(Math.abs(y - gapY) < 0.5);
            for (int column = 48; column <= 51; column++) {
                ink[row * WIDTH_PX + column] = (byte) (isDrawn ? 180 : y >= 12 ? inkAbove : 0);
            }
        }
        return new InkImage(WIDTH_PX, HEIGHT_PX, 10, ink);
    }
}
