package wallplate.sheet.page;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * The direction of the drawing's own axes, from all its level and upright lines.
 *
 * <p>A line drawn along a T-square or a set square is off by some hundredths of a degree whatever its length, so lines
 * weigh by their number more than by their length; short ones are less sure. Lines that are off by more are slips and
 * count for little.
 *
 * @param tiltDegrees how far the axes are turned against the picture's sides, anticlockwise
 * @param deviationDegrees one standard deviation of that
 */
public record LevelDirection(double tiltDegrees, double deviationDegrees) {

    /** How far off a line drawn along a T-square is, one standard deviation; from trials, there is no source. */
    private static final double DRAWN = 0.07;
    /** What the wobble of a hand adds to the angle of a line, in degrees times its length; from trials. */
    private static final double WOBBLE = 0.6;
    /** A line that is off by more was not drawn along the T-square. */
    private static final double SLIP = 0.35;
    /** Fainter lines are streaks of a feeder, folds and shadows, as a share of the paper's grey. */
    private static final double FAINTEST = 0.1;

    private record Vote(double angle, double weight) {}

    /** The direction in which the lines agree. */
    public static LevelDirection of(List<Fitted> level, List<Fitted> upright, double roughTiltDegrees) {
        List<Vote> votes = Stream.concat(level.stream(), upright.stream())
                .filter(line -> line.darkness() >= FAINTEST)
                .map(line -> vote(line, roughTiltDegrees))
                .toList();
        double off = median(votes);
        double weights = 0;
        for (int turn = 0; turn < 10; turn++) {
            double sum = 0;
            weights = 0;
            for (Vote vote : votes) {
                double distance = (vote.angle - off) / SLIP;
                double weight = vote.weight / Math.pow(1 + distance * distance, 2);
                sum += weight * vote.angle;
                weights += weight;
            }
            off = weights == 0 ? off : sum / weights;
        }
        return new LevelDirection(roughTiltDegrees + off, weights == 0 ? 1 : 1 / Math.sqrt(weights));
    }

    private static Vote vote(Fitted line, double rough) {
        double length = line.segment().length();
        double variance = DRAWN * DRAWN + WOBBLE * WOBBLE / (length * length);
        return new Vote(AxisLines.squareOff(line.segment().inclinationDegrees() - rough), 1 / variance);
    }

    private static double median(List<Vote> votes) {
        List<Vote> sorted = votes.stream().sorted(Comparator.comparingDouble(Vote::angle)).toList();
        double half = sorted.stream().mapToDouble(Vote::weight).sum() / 2;
        for (Vote vote : sorted) {
            half -= vote.weight;
            if (half <= 0) {
                return vote.angle;
            }
        }
        return 0;
    }
}
