package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.page.FormulaScan.refit;
import static wallplate.sheet.page.FormulaScan.stroke;

import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;

/** Strokes whose darkness is a formula, crossed and touched by others, so that their directions are known exactly. */
class WholeStrokeTest {

    private static final double SLOPE = Math.tan(Math.toRadians(0.5));

    private static final DoubleBinaryOperator LINE = (x, y) -> x > 10 && x < 30 ? stroke(y - 15 - SLOPE * (x - 20), 0.5) : 0;

    @Test
    void followsALineThatWasFoundInAPartToBothItsEnds() {
        RuledLine line = measured(LINE, Segment.between(17, 15.05, 26, 15.1));

        assertThat(line.segment().inclinationDegrees()).isCloseTo(0.5, within(0.01));
        assertThat(line.segment().length()).isCloseTo(20, within(0.8));
        assertThat(line.deviationDegrees()).isLessThan(0.02);
    }

    /** Another line ends in the stroke at a small angle, and hatching does: there the ink's centre is not the stroke's. */
    @Test
    void leavesOutWhereOthersTouch() {
        DoubleBinaryOperator touching = (x, y) -> x > 9 && x < 16 ? stroke(y - 15.25 - 0.06 * (x - 9), 0.5) : 0;
        DoubleBinaryOperator hatching = (x, y) -> y > 15 + SLOPE * (x - 20) && x > 20 && x < 29
                ? stroke(Math.abs(((x - y + 30) % 2.5) - 1.2) * 0.7, 0.5)
                : 0;
        DoubleBinaryOperator all = (x, y) -> Math.max(
                LINE.applyAsDouble(x, y), Math.max(touching.applyAsDouble(x, y), hatching.applyAsDouble(x, y)));
        Segment found = Segment.between(10.5, 14.95, 29.5, 15.1);

        double refitted = refit(all).fit(found).orElseThrow().segment().inclinationDegrees();
        double measured = measured(all, found).segment().inclinationDegrees();
        assertThat(measured).isCloseTo(0.5, within(0.06));
        assertThat(Math.abs(measured - 0.5)).isLessThan(0.3 * Math.abs(refitted - 0.5));
    }

    @Test
    void saysNothingOfAShortPiece() {
        DoubleBinaryOperator piece = (x, y) -> x > 20 && x < 26 ? stroke(y - 15, 0.5) : 0;

        assertThat(new WholeStroke(refit(piece)).measured(Segment.between(20.3, 15, 25.7, 15)))
                .isEmpty();
    }

    @Test
    void findsNoLineOnBarePaper() {
        assertThat(new WholeStroke(refit((x, y) -> 0)).measured(Segment.between(10, 15, 50, 15)))
                .isEmpty();
    }

    private static RuledLine measured(DoubleBinaryOperator darkness, Segment found) {
        return new WholeStroke(refit(darkness)).measured(found).orElseThrow();
    }
}
