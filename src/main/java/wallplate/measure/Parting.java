package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where values that go along a line fall from a high level to a low one: the place that leaves the least spread about
 * the two means (the change point of least squares).
 */
final class Parting {

    /** So many values at least must lie before and after the place. */
    private static final int FEWEST_BEFORE = 8;

    private static final int FEWEST_AFTER = 6;
    /** Places nearer than this to one another are the same. */
    private static final int SAME_PLACE = 6;

    private final int length;
    private final double[] sums;
    private final double[] squares;

    Parting(double[] values) {
        this.length = values.length;
        this.sums = new double[length + 1];
        this.squares = new double[length + 1];
        for (int at = 0; at < length; at++) {
            sums[at + 1] = sums[at] + values[at];
            squares[at + 1] = squares[at] + values[at] * values[at];
        }
    }

    /** The places that part the values better than those beside them, the best first and none near a better one. */
    List<Integer> places(int most) {
        List<Integer> places = IntStream.range(FEWEST_BEFORE, length - FEWEST_AFTER)
                .filter(at -> error(at) <= errorWithin(at - 1) && error(at) < errorWithin(at + 1))
                .boxed()
                .sorted(Comparator.comparingDouble(this::error))
                .toList();
        List<Integer> kept = new ArrayList<>();
        for (int place : places) {
            if (kept.size() < most && kept.stream().noneMatch(other -> Math.abs(other - place) < SAME_PLACE)) {
                kept.add(place);
            }
        }
        return kept;
    }

    private double errorWithin(int at) {
        return at < FEWEST_BEFORE || at >= length - FEWEST_AFTER ? Double.MAX_VALUE : error(at);
    }

    /** The sum of squares about both means where the values are parted at a place. */
    double error(int at) {
        return spread(0, at) + spread(at, length);
    }

    private double spread(int from, int to) {
        double sum = sums[to] - sums[from];
        return squares[to] - squares[from] - sum * sum / (to - from);
    }
}
