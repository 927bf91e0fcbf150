package wallplate.sheet.page;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * The direction of the drawing's own axes, from all its level and upright lines.
 *
 * <p>Lines stray in two ways, and on every sheet by another measure of each: a T-square or a set square rocks, which turns long
 * and short lines alike, and a pencil is set down beside its point, which turns a short line more than a long one. How much of
 * either a sheet shows is not known beforehand, nor is it chosen: every direction is weighed by how well it explains the lines
 * for each measure, and so are the measures. Squares may rock more in one family of lines than in the other. A few lines are
 * slips or no lines of the drawing at all and say next to nothing.
 *
 * @param tiltDegrees how far the axes are turned against the picture's sides, anticlockwise
 * @param deviationDegrees one standard deviation of that, from the lines' own scatter
 */
public record LevelDirection(double tiltDegrees, double deviationDegrees) {

    /** By how much a square rocks, in degrees, one standard deviation; and how likely each measure is, likeliest in the middle. */
    private static final double[] ROCKING = {0.03, 0.06, 0.12};

    private static final double USUAL_ROCKING = 0.06;
    /** One standard deviation of the logarithm of a sheet's rocking. */
    private static final double ROCKING_SPREAD = 0.5;
    /** How far beside its point a line's end is set down, in millimetres, one standard deviation; all alike likely. */
    private static final double[] SET_DOWN = {0, 0.03, 0.08};

    private static final double BOTH_ENDS = Math.sqrt(2);
    /** The share of lines that are slips, and how far off those are, in degrees, one standard deviation at least. */
    private static final double SLIPS = 0.05;

    private static final double SLIP = 0.6;
    /** Directions are tried about the middle one of the lines, so far to either side and so far apart, in degrees. */
    private static final double REACH = 0.3;

    private static final double STEP = 0.015;
    /** The sheet's own level against its lines' mean: a T-square's blade that is not quite straight; from trials. */
    private static final double BLADE = 0.015;

    /** One line: its angle against the rough tilt, its length and how well its angle was measured. */
    private record Vote(double angle, double length, double deviation) {}

    /** The direction in which the lines agree; the rough tilt, hardly known, where there are none. */
    public static LevelDirection of(List<RuledLine> level, List<RuledLine> upright, double roughTiltDegrees) {
        List<Vote> first = votes(level, roughTiltDegrees);
        List<Vote> second = votes(upright, roughTiltDegrees);
        if (first.isEmpty() && second.isEmpty()) {
            return new LevelDirection(roughTiltDegrees, 1);
        }
        double middle = Weighted.middle(Stream.concat(first.stream(), second.stream())
                        .map(vote -> new Weighted(vote.angle, vote.length)))
                .orElse(0);
        double[] directions = DoubleStream.iterate(middle - REACH, at -> at <= middle + REACH, at -> at + STEP)
                .toArray();
        double[] weights = weights(first, second, directions);
        double mean = 0;
        for (int i = 0; i < directions.length; i++) {
            mean += weights[i] * directions[i];
        }
        double variance = 0;
        for (int i = 0; i < directions.length; i++) {
            variance += weights[i] * (directions[i] - mean) * (directions[i] - mean);
        }
        return new LevelDirection(roughTiltDegrees + mean, Math.hypot(BLADE, Math.sqrt(variance)));
    }

    private static List<Vote> votes(List<RuledLine> lines, double rough) {
        return lines.stream()
                .map(line -> new Vote(
                        AxisLines.squareOff(line.segment().inclinationDegrees() - rough),
                        line.segment().length(),
                        line.deviationDegrees()))
                .toList();
    }

    /** How likely each direction is; all together 1. */
    private static double[] weights(List<Vote> first, List<Vote> second, double[] directions) {
        double[] weights = new double[directions.length];
        for (int i = 0; i < directions.length; i++) {
            double[] measures = new double[SET_DOWN.length];
            for (int k = 0; k < SET_DOWN.length; k++) {
                measures[k] = likelihood(first, directions[i], SET_DOWN[k]) + likelihood(second, directions[i], SET_DOWN[k]);
            }
            weights[i] = logarithmOfSum(measures);
        }
        double all = logarithmOfSum(weights);
        for (int i = 0; i < weights.length; i++) {
            weights[i] = Math.exp(weights[i] - all);
        }
        return weights;
    }

    /** The logarithm of how likely a family's lines are for a direction, whatever its square's rocking. */
    private static double likelihood(List<Vote> votes, double direction, double setDown) {
        double[] measures = new double[ROCKING.length];
        for (int k = 0; k < ROCKING.length; k++) {
            double usual = Math.log(ROCKING[k] / USUAL_ROCKING) / ROCKING_SPREAD;
            measures[k] = -0.5 * usual * usual;
            for (Vote vote : votes) {
                double ends = Math.toDegrees(BOTH_ENDS * setDown / vote.length);
                double deviation = Math.sqrt(ROCKING[k] * ROCKING[k] + ends * ends + vote.deviation * vote.deviation);
                double off = vote.angle - direction;
                measures[k] += Math.log((1 - SLIPS) * density(off, deviation) + SLIPS * density(off, Math.max(SLIP, 2 * deviation)));
            }
        }
        return logarithmOfSum(measures);
    }

    /** The density of the normal distribution but for a factor that is the same for all. */
    private static double density(double off, double deviation) {
        double distance = off / deviation;
        return Math.exp(-0.5 * distance * distance) / deviation;
    }

    private static double logarithmOfSum(double[] logarithms) {
        double greatest = DoubleStream.of(logarithms).max().orElseThrow();
        return greatest
                + Math.log(DoubleStream.of(logarithms)
                        .map(each -> Math.exp(each - greatest))
                        .sum());
    }
}
