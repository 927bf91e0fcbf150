package wallplate.solver;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import wallplate.solver.Slip.Reading;

/**
 * How far a learner's values stray without any slip and to what they are rounded, told from the sheet's own values.
 *
 * <p>Habits, each a hand from very true to careless and a rounding, are weighed by Bayes' rule: each value of the sheet
 * says how probable each of them is, and a value that lies far off says nothing, because a slip may have been made
 * there. What is judged itself is no evidence.
 *
 * @param probabilities of each habit, by rounding and then by hand of {@link #STRAYS_MM}, together 1
 */
record Hand(List<Double> probabilities) {

    /** Hands, by one standard deviation of a length on paper in millimetres, each half as careless again as the one before. */
    private static final double[] STRAYS_MM = {0.05, 0.075, 0.11, 0.17, 0.25, 0.38};

    /** The share of values that say nothing of the hand, and the millimetres on paper over which these may lie. */
    private static final double SAYS_NOTHING = 0.15;

    private static final double SAYS_NOTHING_MM = 10;

    /** Lengths that end where no other line stops the pencil or holds the ruler, and how much farther these stray. */
    private static final Set<String> FREE_ENDS =
            Set.of("barge-board.depth", "gutter.width", "gutter.depth", "covering.projection");

    private static final double FREE_END_FACTOR = 1.6;

    /** The heel point is missed by what two lines stray, the slope's and the plate's. */
    private static final String HEEL = "rafter.heel-offset";

    private static final double HEEL_FACTOR = Math.sqrt(2);

    /** The share of lines at which ruler or pencil slips, and how much farther these stray. */
    private static final double SLIPPED = 0.02;

    private static final double SLIPPED_FACTOR = 2.5;

    /** A protractor is set by eye to some fifth of a degree, and ends that stray turn a line. */
    private static final double PROTRACTOR_DEGREES = 0.2;

    /**
     * The hand that drew a sheet.
     *
     * @param drawn paper millimetres or degrees by measured key
     * @param judged the key that is to be judged
     */
    static Hand of(ExpectedDrawing asked, Map<String, Double> drawn, String judged) {
        double[] logarithms = new double[Rounding.values().length * STRAYS_MM.length];
        asked.values().stream()
                .filter(value -> value instanceof Expected.Length
                        && drawn.containsKey(value.key())
                        && !value.key().equals(judged))
                .forEach(value -> {
                    for (int habit = 0; habit < logarithms.length; habit++) {
                        double density = asMeant(value, rounding(habit))
                                .applyAsDouble(drawn.get(value.key()), stray(habit, value));
                        logarithms[habit] += Math.log((1 - SAYS_NOTHING) * density + SAYS_NOTHING / SAYS_NOTHING_MM);
                    }
                });
        double greatest = Arrays.stream(logarithms).max().orElse(0);
        double all = Arrays.stream(logarithms).map(one -> Math.exp(one - greatest)).sum();
        return new Hand(Arrays.stream(logarithms)
                .mapToObj(one -> Math.exp(one - greatest) / all)
                .toList());
    }

    private static Rounding rounding(int habit) {
        return Rounding.values()[habit / STRAYS_MM.length];
    }

    private static double stray(int habit, Expected expected) {
        double stray = STRAYS_MM[habit % STRAYS_MM.length];
        if (expected instanceof Expected.Angle) {
            return stray + PROTRACTOR_DEGREES;
        }
        if (expected.key().equals(HEEL)) {
            return HEEL_FACTOR * stray;
        }
        return FREE_ENDS.contains(expected.key()) ? FREE_END_FACTOR * stray : stray;
    }

    /** The density of a value, by how far the hand strays, where the size asked was set off; an angle is not rounded. */
    private static DoubleBinaryOperator asMeant(Expected expected, Rounding rounding) {
        double size = Slips.exactSize(expected).orElse(0.0);
        List<Double> meant = expected instanceof Expected.Length ? rounding.of(size) : List.of(size);
        return (measured, scatter) -> mean(meant, measured, scatter);
    }

    private static double mean(List<Double> meant, double measured, double scatter) {
        return meant.stream()
                .mapToDouble(value -> Reading.exactly(value).density(measured, scatter))
                .average()
                .orElse(0);
    }

    /** The probability density of a value where no slip was made. */
    double density(Expected expected, double measured, double uncertainty) {
        return weighed(habit -> {
            double stray = stray(habit, expected);
            DoubleBinaryOperator meant = asMeant(expected, rounding(habit));
            double steady = meant.applyAsDouble(measured, Math.hypot(stray, uncertainty));
            double slipped = meant.applyAsDouble(measured, Math.hypot(SLIPPED_FACTOR * stray, uncertainty));
            return (1 - SLIPPED) * steady + SLIPPED * slipped;
        });
    }

    /**
     * The probability density of a value where another size was meant, together with the probability that this hand
     * rounds as it was rounded.
     */
    double density(Rounding rounding, Reading meant, Expected expected, double measured, double uncertainty) {
        return weighed(habit -> rounding(habit) == rounding
                ? meant.density(measured, Math.hypot(stray(habit, expected), uncertainty))
                : 0);
    }

    private double weighed(IntToDoubleFunction density) {
        return IntStream.range(0, probabilities.size())
                .mapToDouble(habit -> probabilities.get(habit) * density.applyAsDouble(habit))
                .sum();
    }
}
