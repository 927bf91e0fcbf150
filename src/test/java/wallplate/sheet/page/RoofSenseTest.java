package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

class RoofSenseTest {

    /** A rafter that rises to the right, and a tie beam under it, upright on a page of 300 by 200 mm. */
    private static final Segment RAFTER = Segment.between(60, 80, 220, 160);

    private static final Segment BEAM = Segment.between(80, 90, 220, 90);

    private static Segment turned(Segment segment, Turn turn) {
        return new Segment(turned(segment.start(), turn), turned(segment.end(), turn));
    }

    /** The same drawing on a page that has to be turned so to be upright. */
    private static Point turned(Point point, Turn turn) {
        return switch (turn) {
            case UPRIGHT -> point;
            case QUARTER_LEFT -> new Point(-point.y(), point.x());
            case UPSIDE_DOWN -> new Point(-point.x(), -point.y());
            case QUARTER_RIGHT -> new Point(point.y(), -point.x());
        };
    }

    @ParameterizedTest
    @EnumSource
    void theBeamLiesUnderTheSlopeOnlyTheRightWayUp(Turn turn) {
        List<Segment> sloping = List.of(turned(RAFTER, turn));
        List<Segment> level = List.of(turned(BEAM, turn));
        assertThat(RoofSense.slopesAbove(turn, sloping, level)).isTrue();
        assertThat(RoofSense.slopesAbove(turn.opposite(), sloping, level)).isFalse();
    }

    /** Longer than the beam and higher than the whole drawing: its height alone would turn the page over. */
    @ParameterizedTest
    @EnumSource
    void aHeadingBesideTheSlopeSaysNothing(Turn turn) {
        Segment heading = Segment.between(-200, 190, 50, 190);
        List<Segment> sloping = List.of(turned(RAFTER, turn));
        List<Segment> level = List.of(turned(BEAM, turn), turned(heading, turn));
        assertThat(RoofSense.slopesAbove(turn, sloping, level)).isTrue();
        assertThat(RoofSense.slopesAbove(turn.opposite(), sloping, level)).isFalse();
    }

    /** A dimension line over the slope outweighs the wall's short foot; its faces and the break line do not let it. */
    @ParameterizedTest
    @EnumSource
    void wallAndBreakLineHangUnderASlopeWithoutATieBeam(Turn turn) {
        List<Segment> sloping = List.of(turned(RAFTER, turn));
        List<Segment> lines = List.of(
                turned(Segment.between(120, 170, 150, 170), turn),
                turned(Segment.between(85, 60, 97, 60), turn),
                turned(Segment.between(85, 60, 85, 88), turn),
                turned(Segment.between(219, 100, 219, 165), turn));
        assertThat(RoofSense.slopesAbove(turn, sloping, lines)).isTrue();
        assertThat(RoofSense.slopesAbove(turn.opposite(), sloping, lines)).isFalse();
    }

    @ParameterizedTest
    @EnumSource
    void saysHowClearlyTheLinesLieUnderTheSlope(Turn turn) {
        List<Segment> sloping = List.of(turned(RAFTER, turn));
        List<Segment> lines = List.of(turned(BEAM, turn), turned(Segment.between(120, 170, 155, 170), turn));
        assertThat(RoofSense.shareUnder(turn, sloping, lines)).isCloseTo(0.8, within(0.001));
        assertThat(RoofSense.shareUnder(turn.opposite(), sloping, lines)).isCloseTo(0.2, within(0.001));
    }

    @Test
    void withoutLevelLinesUnderTheSlopeItsHeightDecides() {
        List<Segment> bar = List.of(Segment.between(-60, 20, 40, 20));
        assertThat(RoofSense.slopesAbove(Turn.UPRIGHT, List.of(RAFTER), bar)).isTrue();
        assertThat(RoofSense.slopesAbove(Turn.UPSIDE_DOWN, List.of(RAFTER), bar)).isFalse();
    }

    @Test
    void withoutLinesAnyTurnWillDo() {
        assertThat(RoofSense.slopesAbove(Turn.UPSIDE_DOWN, List.of(), List.of(BEAM))).isTrue();
        assertThat(RoofSense.slopesAbove(Turn.UPSIDE_DOWN, List.of(RAFTER), List.of())).isTrue();
    }
}
