package wallplate.sheet.page;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * The direction of the drawing's own axes, from all its level and upright lines.
 *
 * <p>A line drawn along a T-square or a set square is off by some hundredths of a degree, a short one by more. How far, is
 * judged for either family from its own scatter, because a learner whose set square rocks can hold the T-square well.
 * Lines that are off by much more are slips and count for little.
 *
 * @param tiltDegrees how far the axes are turned against the picture's sides, anticlockwise
 * @param deviationDegrees one standard deviation of that, from the lines' own scatter
 */
public record LevelDirection(double tiltDegrees, double deviationDegrees) {

    /** How far off a long line is before its family's scatter is known, one standard deviation; from trials. */
    private static final double DRAWN = 0.07;
    /** For so many lines that first guess counts. */
    private static final double GUESS_WEIGHT = 6;
    /** A line of this length, in millimetres, is off by 1.4 times as much as a long one; from trials. */
    private static final double SHORT = 40;
    /** A line that is off by more was not drawn along the T-square. */
    private static final double SLIP = 0.6;
    /** Fainter lines are streaks of a feeder, folds and shadows, as a share of the paper's grey. */
    private static final double FAINTEST = 0.1;
    /** The sheet's own level against its lines' mean: a T-square's blade that is not quite straight; from trials. */
    private static final double TSQUARE = 0.015;

    private static final int TURNS = 12;

    /** One line: its angle against the rough tilt, and its length. */
    private record Vote(double angle, double length) {

        /** The share of its family's scatter that a line of this length has, squared. */
        double spread() {
            return 1 + SHORT * SHORT / (length * length);
        }

        double slipWeight(double off) {
            double distance = (angle - off) / SLIP;
            return 1 / Math.pow(1 + distance * distance, 2);
        }
    }

    /** The direction in which the lines agree. */
    public static LevelDirection of(List<Fitted> level, List<Fitted> upright, double roughTiltDegrees) {
        List<Vote> first = votes(level, roughTiltDegrees);
        List<Vote> second = votes(upright, roughTiltDegrees);
        if (first.isEmpty() && second.isEmpty()) {
            return new LevelDirection(roughTiltDegrees, 1);
        }
        double firstVariance = DRAWN * DRAWN;
        double secondVariance = DRAWN * DRAWN;
        double off = median(Stream.concat(first.stream(), second.stream()).toList());
        double weights = 0;
        for (int turn = 0; turn < TURNS; turn++) {
            double from = off;
            double firstWeight = weight(first, from) / firstVariance;
            double secondWeight = weight(second, from) / secondVariance;
            weights = firstWeight + secondWeight;
            off = (moment(first, from) / firstVariance + moment(second, from) / secondVariance) / weights;
            firstVariance = variance(first, off);
            secondVariance = variance(second, off);
        }
        return new LevelDirection(roughTiltDegrees + off, Math.hypot(TSQUARE, 1 / Math.sqrt(weights)));
    }

    private static List<Vote> votes(List<Fitted> lines, double rough) {
        return lines.stream()
                .filter(line -> line.darkness() >= FAINTEST)
                .map(line -> new Vote(
                        AxisLines.squareOff(line.segment().inclinationDegrees() - rough), line.segment().length()))
                .toList();
    }

    private static double weight(List<Vote> votes, double off) {
        return votes.stream().mapToDouble(vote -> vote.slipWeight(off) / vote.spread()).sum();
    }

    private static double moment(List<Vote> votes, double off) {
        return votes.stream()
                .mapToDouble(vote -> vote.angle * vote.slipWeight(off) / vote.spread())
                .sum();
    }

    /** The squared scatter of a family's long lines about a direction, begun from the guess. */
    private static double variance(List<Vote> votes, double off) {
        double sum = GUESS_WEIGHT * DRAWN * DRAWN;
        double count = GUESS_WEIGHT;
        for (Vote vote : votes) {
            double distance = vote.angle - off;
            sum += vote.slipWeight(off) * distance * distance / vote.spread();
            count += vote.slipWeight(off);
        }
        return sum / count;
    }

    private static double median(List<Vote> votes) {
        List<Vote> sorted = votes.stream().sorted(Comparator.comparingDouble(Vote::angle)).toList();
        double half = sorted.stream().mapToDouble(vote -> 1 / vote.spread()).sum() / 2;
        for (Vote vote : sorted) {
            half -= 1 / vote.spread();
            if (half <= 0) {
                return vote.angle;
            }
        }
        return 0;
    }
}
