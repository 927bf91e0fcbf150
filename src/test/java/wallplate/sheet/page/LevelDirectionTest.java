package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** Lines that stray by known measures from a level that is known. */
class LevelDirectionTest {

    private static final double LEVEL = 1.3;
    private static final double ROUGH = 1.25;

    private static final double[] LONG = {120, 110, 100, 95};
    private static final double[] SHORT = {14, 15, 16, 18, 20, 22, 25, 30, 14, 16};

    @Test
    void isTheRoughTiltHardlyKnownWhereNoLineWasFound() {
        LevelDirection level = LevelDirection.of(List.of(), List.of(), ROUGH);

        assertThat(level.tiltDegrees()).isEqualTo(ROUGH);
        assertThat(level.deviationDegrees()).isGreaterThan(0.5);
    }

    /** Where squares rock, a long line lies no truer than a short one: four long ones astray are outvoted by ten. */
    @Test
    void believesShortLinesWhereTheyLieAsTrueAsLongOnes() {
        List<RuledLine> level = lines(LONG, 0, new double[] {0.11, 0.09, 0.13, 0.1});
        List<RuledLine> upright =
                lines(SHORT, 90, new double[] {-0.02, 0.02, 0, 0.03, -0.03, 0.01, -0.01, 0.02, -0.02, 0});

        assertThat(LevelDirection.of(level, upright, ROUGH).tiltDegrees()).isCloseTo(LEVEL + 0.02, within(0.025));
    }

    /** Where ends are set down beside their points, short lines scatter by half a degree and long ones hardly. */
    @Test
    void believesLongLinesWhereShortOnesScatter() {
        List<RuledLine> level = lines(LONG, 0, new double[] {0.01, -0.01, 0.02, 0});
        List<RuledLine> upright =
                lines(SHORT, 90, new double[] {0.4, 0.3, -0.2, 0.35, 0.3, -0.25, 0.3, 0.25, 0.45, -0.1});

        assertThat(LevelDirection.of(level, upright, ROUGH).tiltDegrees()).isCloseTo(LEVEL, within(0.04));
    }

    @Test
    void isNotTurnedByASlip() {
        List<RuledLine> level = lines(LONG, 0, new double[] {0.01, -0.01, 0.02, 1.2});

        assertThat(LevelDirection.of(level, List.of(), ROUGH).tiltDegrees()).isCloseTo(LEVEL, within(0.03));
    }

    /** Over many sheets of one kind the stated deviation is about what the level is really off by. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void statesHowFarOffItMayBe(boolean rocking) {
        Random random = new Random(4);
        double squares = 0;
        int sheets = 300;
        for (int sheet = 0; sheet < sheets; sheet++) {
            List<RuledLine> level = strayed(LONG, 0, rocking, random);
            List<RuledLine> upright = strayed(SHORT, 90, rocking, random);
            LevelDirection direction = LevelDirection.of(level, upright, ROUGH);
            double off = (direction.tiltDegrees() - LEVEL) / direction.deviationDegrees();
            squares += off * off;
        }
        assertThat(Math.sqrt(squares / sheets)).isBetween(0.5, 1.1);
    }

    private static List<RuledLine> strayed(double[] lengths, double direction, boolean rocking, Random random) {
        double[] off = new double[lengths.length];
        for (int i = 0; i < off.length; i++) {
            double ends = Math.toDegrees(0.045 * Math.sqrt(2) / lengths[i]);
            off[i] = random.nextGaussian() * (rocking ? 0.07 : ends);
        }
        return lines(lengths, direction, off);
    }

    private static List<RuledLine> lines(double[] lengths, double direction, double[] off) {
        List<RuledLine> lines = new ArrayList<>();
        for (int i = 0; i < lengths.length; i++) {
            Point start = new Point(50, 40 + 9 * i);
            Vector along = Vector.atDegrees(LEVEL + direction + off[i]);
            lines.add(new RuledLine(new Segment(start, start.plus(along.times(lengths[i]))), 0.01));
        }
        return lines;
    }
}
