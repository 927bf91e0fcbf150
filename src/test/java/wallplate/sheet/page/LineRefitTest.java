package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.page.FormulaScan.stroke;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/** Strokes whose darkness across them is a formula, so that their centre lines are known exactly. */
class LineRefitTest {

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, -1.2, 2})
    void findsTheCentreLineMuchFinerThanAPixel(double degrees) {
        double slope = Math.tan(Math.toRadians(degrees));
        Fitted fitted = fit((x, y) -> stroke(y - 15 - slope * (x - 30), 0.5));

        assertThat(fitted.segment().inclinationDegrees()).isCloseTo(degrees, within(0.01));
        assertThat(fitted.segment().midpoint().y()).isCloseTo(15, within(0.003));
        assertThat(fitted.coverage()).isEqualTo(1);
        assertThat(fitted.residual()).isLessThan(0.01);
    }

    /** A neighbour 0.7 mm away is as dark: the smallest distance of lines after ISO 128-2. */
    @Test
    void isNotPulledByANeighbour() {
        Fitted fitted = fit((x, y) -> Math.max(stroke(y - 15, 0.5), stroke(y - 15.7, 0.5)));

        assertThat(fitted.segment().midpoint().y()).isCloseTo(15, within(0.02));
        assertThat(fitted.segment().inclinationDegrees()).isCloseTo(0, within(0.02));
    }

    /** From 2H to 2B the darkness of a stroke changes several times over; its place does not. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.2, 0.4, 0.8})
    void placesFaintAndDarkStrokesAlike(double darkness) {
        Fitted fitted = fit((x, y) -> stroke(y - 15.05, darkness));

        assertThat(fitted.segment().midpoint().y()).isCloseTo(15.05, within(0.004));
        assertThat(fitted.darkness()).isCloseTo(darkness, within(0.15 * darkness + 0.03));
    }

    @Test
    void saysHowMuchOfABrokenLineIsThere() {
        Fitted fitted = fit((x, y) -> x % 10 < 6 ? stroke(y - 15, 0.5) : 0);

        assertThat(fitted.coverage()).isCloseTo(0.6, within(0.06));
        assertThat(fitted.segment().midpoint().y()).isCloseTo(15, within(0.005));
    }

    @Test
    void findsNoLineOnBarePaper() {
        assertThat(FormulaScan.refit((x, y) -> 0).fit(Segment.between(10, 15, 50, 15))).isEmpty();
    }

    @Test
    void findsNoLineOutsideThePicture() {
        assertThat(FormulaScan.refit((x, y) -> stroke(y - 15, 0.5)).fit(Segment.between(100, 95, 140, 95)))
                .isEmpty();
    }

    /** The rough line is off by a third of a millimetre and a quarter of a degree, as a detector's is. */
    private static Fitted fit(DoubleBinaryOperator darkness) {
        return FormulaScan.refit(darkness)
                .fit(Segment.between(10, 14.75, 50, 14.92))
                .orElseThrow();
    }
}
