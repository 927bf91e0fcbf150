package wallplate.statistics;

import java.util.Arrays;

/**
 * How much better the best learners did in an item than the weakest: from -1 to 1, as a part of the item's maximum.
 *
 * <p>The groups are the 27 % with the highest and the lowest totals, the share that tells them apart best (Kelley 1939,
 * "The selection of upper and lower groups for the validation of test items", Journal of Educational Psychology 30,
 * 17-24), rounded up to whole learners. Where learners with the same total stand on the edge of a group, the places that
 * are left are shared among them, so that their order changes nothing.
 */
public final class Discrimination {

    /** Kelley's share. */
    public static final double GROUP = 0.27;

    private Discrimination() {}

    /**
     * The index for one item.
     *
     * @param marks the learners' marks in the item
     * @param totals the same learners' totals
     * @param maximum the item's maximum
     * @param group the share of learners in either group, above 0 and at most a half
     */
    public static Statistic<Double> of(double[] marks, double[] totals, double maximum, double group) {
        int size = (int) Math.ceil(group * totals.length - 1e-9);
        if (totals.length < 2 || 2 * size > totals.length) {
            return Statistic.unknown("there are too few learners for an upper and a lower group");
        }
        if (maximum <= 0) {
            return Statistic.unknown("it brings no marks");
        }
        double[] sorted = totals.clone();
        Arrays.sort(sorted);
        if (sorted[0] == sorted[sorted.length - 1]) {
            return Statistic.unknown("every learner has the same total");
        }
        double lower = meanOfGroup(marks, totals, sorted[size - 1], -1, size);
        double upper = meanOfGroup(marks, totals, sorted[sorted.length - size], 1, size);
        return Statistic.known((upper - lower) / maximum);
    }

    /** @param side 1 for those above the edge, -1 for those below it */
    private static double meanOfGroup(double[] marks, double[] totals, double edge, int side, int size) {
        double sum = 0;
        int within = 0;
        double sumAtEdge = 0;
        int atEdge = 0;
        for (int learner = 0; learner < totals.length; learner++) {
            if (totals[learner] == edge) {
                sumAtEdge += marks[learner];
                atEdge++;
            } else if (side * (totals[learner] - edge) > 0) {
                sum += marks[learner];
                within++;
            }
        }
        return (sum + sumAtEdge * (size - within) / atEdge) / size;
    }
}
