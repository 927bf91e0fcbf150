package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.sheet.page.PageMap.Lens;

class PageMapTest {

    private static final double[] PERSPECTIVE = {11.2, 0.4, 150, 0.3, -10.8, 2600, 2e-4, -3e-4, 1};

    /** Two to three percent are what a telephone's lens bends at most; common practice. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.03, -0.03})
    void comesBackThroughPerspectiveAndLens(double bend) {
        PageMap map = new PageMap(PERSPECTIVE, new Lens(bend, 1700, 1250, 2100));

        for (double x : new double[] {0, 148.5, 297}) {
            for (double y : new double[] {0, 105, 210}) {
                Point point = new Point(x, y);
                assertThat(map.inverse().apply(map.apply(point)).distanceTo(point))
                        .as("millimetres lost at %s", point)
                        .isLessThan(1e-4);
            }
        }
    }

    @Test
    void lensMovesTheEndOfItsRadiusByItsBend() {
        Point seen = new Lens(0.02, 100, 50, 500).seen(new Point(600, 50));

        assertThat(seen.x()).isCloseTo(100 + 500 * 1.02, within(1e-9));
        assertThat(seen.y()).isCloseTo(50, within(1e-9));
    }

    @Test
    void carriesMillimetresThroughBothMapsInTurn() {
        PageMap moved = PageMap.affine(1, 0, 10, 0, 1, 20);
        PageMap scan = PageMap.affine(4, 0, 0, 0, -4, 840);

        assertThat(scan.after(moved).apply(new Point(1, 2))).isEqualTo(new Point(44, 752));
    }

    @Test
    void tellsPixelsToAMillimetreByTheAreaWhereAxesDiffer() {
        PageMap map = PageMap.affine(4, 0, 7, 0, -9, 1000);

        assertThat(map.pixelsPerMmAt(new Point(30, 40))).isCloseTo(6, within(1e-9));
    }

    @Test
    void refusesToInvertAFlatMap() {
        PageMap flat = PageMap.affine(1, 2, 0, 2, 4, 0);

        assertThatThrownBy(flat::inverse).isInstanceOf(ArithmeticException.class).hasMessageContaining("flat");
    }
}
