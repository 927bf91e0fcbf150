package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.PaperSides.Side;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;

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

    @Test
    void takesAPictureOfWhichOnlyOneEdgeIsAskewForAScansIfItStatesItsResolution() {
        assertThat(withOneEdgeAskew(150).kind()).isEqualTo(Kind.SCAN);
        assertThat(withOneEdgeAskew(150).paper()).hasSize(3);
        assertThat(withOneEdgeAskew(72).kind()).isEqualTo(Kind.PHOTOGRAPH);
    }

    /** A camera that leans turns both edges that run away from it. */
    @Test
    void takesAPictureOfWhichTwoEdgesAreAskewForACameras() {
        RoughPage page = rectified(
                        150,
                        side(new Point(WIDTH / 2.0, HEIGHT - 25), 0, 40),
                        side(new Point(WIDTH - 30, HEIGHT / 2.0), -91, 40),
                        side(new Point(WIDTH / 2.0, 30), 180, 40),
                        side(new Point(30, HEIGHT / 2.0), 91, 40))
                .orElseThrow();

        assertThat(page.kind()).isEqualTo(Kind.PHOTOGRAPH);
    }

    /** Square edges that are five percent too far apart one way: two are the rims of shadows. */
    @Test
    void takesNoScaleFromSquareEdgesThatAreInNoProportionOfTheSheets() {
        assertThat(square(1200, 1697, 148, 148).scale()).isEqualTo(Scale.EDGES);
        assertThat(square(1260, 1697, 148, 148).scale()).isEqualTo(Scale.OPPOSITE_EDGES);
        assertThat(square(1260, 1697, 72, 72).scale()).isEqualTo(Scale.FILLED_PICTURE);
    }

    @Test
    void takesScaleFromEdgesOfOblongPixelsWhereTheFileStatesThemSo() {
        assertThat(square(1260, 1697, 155.4, 148).scale()).isEqualTo(Scale.EDGES);
    }

    @Test
    void leavesTwoSizesOpenWhereTheResolutionGivesAnotherThanTheEdges() {
        assertThat(square(1200, 1697, 145.5, 145.5).isContradicted()).isFalse();
        assertThat(square(1200, 1697, 154, 154).otherMm()).isCloseTo(145.1 / 154, within(0.001));
        assertThat(square(1200, 1697, 0, 0).isContradicted()).isFalse();
    }

    /** Edges so far apart in the middle of the picture. */
    private static RoughPage square(double across, double up, double dpiX, double dpiY) {
        Picture picture = new Picture(WIDTH, HEIGHT, new byte[WIDTH * HEIGHT], dpiX, dpiY);
        Point middle = new Point(WIDTH / 2.0, HEIGHT / 2.0);
        List<Side> sides = List.of(
                side(middle.plus(new Vector(0, up / 2)), 0, 40),
                side(middle.plus(new Vector(across / 2, 0)), -90, 40),
                side(middle.plus(new Vector(0, -up / 2)), 180, 40),
                side(middle.plus(new Vector(-across / 2, 0)), 90, 40));
        return new PaperRectification(picture, 297, 210)
                .rectify(new PaperSides(sides.stream().map(Optional::of).toList()))
                .orElseThrow();
    }

    private static RoughPage withOneEdgeAskew(double dpi) {
        return rectified(
                        dpi,
                        side(new Point(WIDTH / 2.0, HEIGHT - 25), -0.8, 40),
                        side(new Point(WIDTH - 30, HEIGHT / 2.0), -90, 41),
                        side(new Point(WIDTH / 2.0, 30), 180, 41),
                        side(new Point(30, HEIGHT / 2.0), 90, 41))
                .orElseThrow();
    }

    private static Optional<RoughPage> rectified(double dpi, Side... sides) {
        Picture picture = new Picture(WIDTH, HEIGHT, new byte[WIDTH * HEIGHT], dpi, dpi);
        return new PaperRectification(picture, 297, 210)
                .rectify(new PaperSides(Stream.of(sides).map(Optional::of).toList()));
    }

    private static Side side(Point middle, double degrees, double contrast) {
        Line line = new Line(middle, Vector.atDegrees(degrees));
        return new Side(line, List.of(line.pointAt(-300), line.origin(), line.pointAt(300)), contrast);
    }

    private static Optional<RoughPage> rectified(double dpi) {
        Picture picture = new Picture(WIDTH, HEIGHT, new byte[WIDTH * HEIGHT], dpi, dpi);
        PaperSides sides = new PaperSides(List.of(
                Optional.of(side(-1.09, HEIGHT - 25, 41)), Optional.empty(), Optional.of(side(179.7, 30, -9)), Optional.empty()));
        return new PaperRectification(picture, 297, 210).rectify(sides);
    }

    private static Side side(double degrees, double y, double contrast) {
        return side(new Point(WIDTH / 2.0, y), degrees, contrast);
    }
}
