package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.PaperSides.Side;
import wallplate.sheet.page.RoughPage.Kind;

class PaperRectificationTest {

    private static final int WIDTH = 1300;
    private static final int HEIGHT = 1810;

    /** The soft rim of a lid's shadow looked like an edge that is not parallel to the sheet's own. */
    @Test
    void leavesOutAnEdgeAskewOfAPictureThatAScannerMade() {
        RoughPage page = rectified(150).orElseThrow();

        assertThat(page.kind()).isEqualTo(Kind.SCAN);
        assertThat(page.paper()).hasSize(1);
    }

    @Test
    void knowsOfNoSheetWhereACameraSawTwoEdgesAskew() {
        assertThat(rectified(72)).isEmpty();
    }

    private static Optional<RoughPage> rectified(double dpi) {
        Picture picture = new Picture(WIDTH, HEIGHT, new byte[WIDTH * HEIGHT], dpi, dpi);
        PaperSides sides = new PaperSides(List.of(
                Optional.of(side(-1.09, HEIGHT - 25, 41)), Optional.empty(), Optional.of(side(179.7, 30, -9)), Optional.empty()));
        return new PaperRectification(picture, 297, 210).rectify(sides);
    }

    private static Side side(double degrees, double y, double contrast) {
        Line line = new Line(new Point(WIDTH / 2.0, y), Vector.atDegrees(degrees));
        return new Side(line, List.of(line.pointAt(-300), line.origin(), line.pointAt(300)), contrast);
    }
}
