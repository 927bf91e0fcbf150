package wallplate.solver;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import wallplate.solver.Slip.Reading;

/**
 * How far a learner's values stray without any slip, told from the sheet's own values.
 *
 * <p>Hands from very true to careless are weighed by Bayes' rule: each value of the sheet says how probable each of them
 * is, and a value that lies far off says nothing, because a slip may have been made there. What is judged itself is no
 * evidence.
 *
 * @param probabilities of each hand of {@link #STRAYS_MM}, together 1
 */
record Hand(List<Double> probabilities) {

    /** Hands, by one standard deviation of a length on paper in millimetres, each half as careless again as the one before. */
    private static final double[] STRAYS_MM = {0.05, 0.075, 0.11, 0.17, 0.25, 0.38};

    /** The share of values that say nothing of the hand, and the millimetres on paper over which these may lie. */
    private static final double SAYS_NOTHING = 0.15;

    private static final double SAYS_NOTHING_MM = 10;

    /**
     * Lengths that end where no other line stops the pencil, and how much farther these stray; the heel point is missed
     * by what the whole slope is turned and moved.
     */
    private static final Set<String> FREE_ENDS =
            Set.of("barge-board.depth", "gutter.depth", "covering.projection", "rafter.heel-offset");

    private static final double FREE_END_FACTOR = 1.6;

    /** The share of lines at which ruler or pencil slips, and how much farther these stray. */
    private static final double SLIPPED = 0.02;

    private static final double SLIPPED_FACTOR = 2.5;

    /** A protractor is set by eye to some fifth of a degree, and ends that stray turn a line. */
    private static final double PROTRACTOR_DEGREES = 0.2;

    /** Half millimetres are as often rounded to as whole ones: this much scatter on the way to a size. */
    private static final double ROUNDING_MM = 0.15;

    /**
     * The hand that drew a sheet.
     *
     * @param drawn paper millimetres or degrees by measured key
     * @param judged the key that is to be judged
     */
    static Hand of(ExpectedDrawing asked, Map<String, Double> drawn, String judged) {
        double[] logarithms = new double[STRAYS_MM.length];
        asked.values().stream()
                .filter(value -> value instanceof Expected.Length
                        && drawn.containsKey(value.key())
                        && !value.key().equals(judged))
                .forEach(value -> {
                    for (int hand = 0; hand < STRAYS_MM.length; hand++) {
                        double density = asMeant(value).density(drawn.get(value.key()), stray(hand, value));
                        logarithms[hand] += Math.log((1 - SAYS_NOTHING) * density + SAYS_NOTHING / SAYS_NOTHING_MM);
                    }
                });
        double greatest = Arrays.stream(logarithms).max().orElse(0);
        double all = Arrays.stream(logarithms).map(one -> Math.exp(one - greatest)).sum();
        return new Hand(Arrays.stream(logarithms)
                .mapToObj(one -> Math.exp(one - greatest) / all)
                .toList());
    }

    private static double stray(int hand, Expected expected) {
        if (expected instanceof Expected.Angle) {
            return STRAYS_MM[hand] + PROTRACTOR_DEGREES;
        }
        return FREE_ENDS.contains(expected.key()) ? FREE_END_FACTOR * STRAYS_MM[hand] : STRAYS_MM[hand];
    }

    /** The size asked, exact, or rounded to the whole or the half millimetre. */
    private static Reading asMeant(Expected expected) {
        if (expected instanceof Expected.Length length && length.drawnMm() > 0) {
            double half = Math.round(2 * length.exactMm()) / 2.0;
            return Reading.exactly(length.exactMm())
                    .with(Reading.exactly(length.drawnMm()))
                    .with(Reading.exactly(half > 0 ? half : length.exactMm()));
        }
        return Reading.exactly(Slips.exactSize(expected).orElse(0.0));
    }

    /** The probability density of a value where no slip was made. */
    double density(Expected expected, double measured, double uncertainty) {
        Reading meant = asMeant(expected);
        return weighed(hand -> {
            double stray = stray(hand, expected);
            double steady = meant.density(measured, Math.hypot(stray, uncertainty));
            double slipped = meant.density(measured, Math.hypot(SLIPPED_FACTOR * stray, uncertainty));
            return (1 - SLIPPED) * steady + SLIPPED * slipped;
        });
    }

    /** The probability density of a value where another size was meant. */
    double density(Reading meant, Expected expected, double measured, double uncertainty) {
        double way = Math.hypot(uncertainty, ROUNDING_MM);
        return weighed(hand -> meant.density(measured, Math.hypot(stray(hand, expected), way)));
    }

    private double weighed(IntToDoubleFunction density) {
        return IntStream.range(0, STRAYS_MM.length)
                .mapToDouble(hand -> probabilities.get(hand) * density.applyAsDouble(hand))
                .sum();
    }
}
