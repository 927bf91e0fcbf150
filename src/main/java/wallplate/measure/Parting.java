package wallplate.measure;

import java.util.OptionalInt;

/**
 * Where values that go along a line fall from a high level to a low one: the place that leaves the least spread about
 * the two means (the change point of least squares).
 */
final class Parting {

    /** So many values at least must lie before and after the place. */
    private static final int FEWEST_BEFORE = 10;

    private static final int FEWEST_AFTER = 6;
    /** Places nearer than this to one another are the same. */
    private static final int SAME_PLACE = 6;

    private final int length;
    private final double leastContrast;
    private final double[] sums;
    private final double[] squares;

    /**
     * @param leastContrast by how much the mean before a place must exceed the mean after it
     */
    Parting(double[] values, double leastContrast) {
        this.length = values.length;
        this.leastContrast = leastContrast;
        this.sums = new double[length + 1];
        this.squares = new double[length + 1];
        for (int at = 0; at < length; at++) {
            sums[at + 1] = sums[at] + values[at];
            squares[at + 1] = squares[at] + values[at] * values[at];
        }
    }

    /** The best place, away from another one where that is given; empty where nowhere is contrast enough. */
    OptionalInt best(OptionalInt awayFrom) {
        OptionalInt best = OptionalInt.empty();
        double least = Double.MAX_VALUE;
        for (int at = FEWEST_BEFORE; at < length - FEWEST_AFTER; at++) {
            boolean same = awayFrom.isPresent() && Math.abs(at - awayFrom.getAsInt()) <= SAME_PLACE;
            if (!same && contrast(at) > leastContrast && error(at) < least) {
                least = error(at);
                best = OptionalInt.of(at);
            }
        }
        return best;
    }

    /** The sum of squares about both means where the values are parted at a place. */
    double error(int at) {
        return spread(0, at) + spread(at, length);
    }

    private double contrast(int at) {
        return sums[at] / at - (sums[length] - sums[at]) / (length - at);
    }

    private double spread(int from, int to) {
        double sum = sums[to] - sums[from];
        return squares[to] - squares[from] - sum * sum / (to - from);
    }
}
