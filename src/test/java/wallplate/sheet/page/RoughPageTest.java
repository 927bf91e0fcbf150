package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.task.SheetFormat;

class RoughPageTest {

    private static final SheetFormat A4 = new SheetFormat("A4", 297, 210, 80);

    /** The right and the left edge lie 298 mm apart; the upper one is not quite square to them, whichever way. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.3, -0.02, 0, 0.02, 0.3})
    void threeEdgesOfASheetThatIsCutOffBelowSayThatItLiesAlongThePicture(double offSquare) {
        Line right = new Line(new Point(305, 110), Vector.atDegrees(90));
        Line upper = new Line(new Point(154, 213), Vector.atDegrees(180 + offSquare));
        Line left = new Line(new Point(7, 140), Vector.atDegrees(270));

        assertThat(page(right, upper, left).isLandscape(A4)).isTrue();
    }

    @Test
    void aPictureOfTheUpperHalfOfASheetOnEndIsBroaderThanHighAndStillOnEnd() {
        Line right = new Line(new Point(215, 60), Vector.atDegrees(90));
        Line left = new Line(new Point(5, 70), Vector.atDegrees(270));

        assertThat(page(right, left).isLandscape(A4)).isFalse();
    }

    private static RoughPage page(Line... edges) {
        PageMap map = PageMap.affine(8, 0, 0, 0, -8, 1700);
        return new RoughPage(map, 313, 213, List.of(edges), Kind.SCAN, Scale.OPPOSITE_EDGES);
    }
}
