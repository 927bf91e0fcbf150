package wallplate.solver;

import java.util.List;
import java.util.Map;

/**
 * How far a learner's values stray without any slip, told from the sheet's own values.
 *
 * <p>Strays are taken to be spread as by Laplace: mostly small, now and then large, as careless drawing is.
 *
 * @param strayMm how far a length on paper strays on average
 */
record Hand(double strayMm) {

    /** What a hand is taken for before anything of it is seen, and how many values that is worth; common practice. */
    private static final double USUAL_MM = 0.2;

    private static final double WORTH = 4;

    /** A value further off than this, in millimetres on paper, is no stray: it says this much and no more. */
    private static final double FARTHEST_MM = 0.6;

    /** A protractor is set by eye to some fifth of a degree, and ends that stray turn a line. */
    private static final double PROTRACTOR_DEGREES = 0.15;

    /** Half millimetres are as often rounded to as whole ones: this much scatter on the way to a size. */
    private static final double ROUNDING_MM = 0.15;

    /** The mean distance of the logistic distribution from its middle, for a scale of one: twice the logarithm of two. */
    private static final double LOGISTIC_MEAN = 2 * Math.log(2);

    static Hand of(ExpectedDrawing asked, Map<String, Double> drawn) {
        List<Double> strays = asked.values().stream()
                .filter(value -> value instanceof Expected.Length && drawn.containsKey(value.key()))
                .map(value -> Math.min(FARTHEST_MM, ((Expected.Length) value).deviation(drawn.get(value.key()))))
                .toList();
        double sum = strays.stream().mapToDouble(Double::doubleValue).sum();
        return new Hand((WORTH * USUAL_MM + sum) / (WORTH + strays.size()));
    }

    private double stray(Expected expected) {
        return expected instanceof Expected.Angle ? strayMm + PROTRACTOR_DEGREES : strayMm;
    }

    /** The probability density of a value that lies so far from the right one and no slip was made. */
    double density(Expected expected, double deviation, double uncertainty) {
        double stray = Math.hypot(stray(expected), uncertainty);
        double tail = Math.exp(-deviation / (stray / LOGISTIC_MEAN));
        return tail / (stray / LOGISTIC_MEAN * (1 + tail) * (1 + tail));
    }

    /** One standard deviation of a value about the size that was meant. */
    double scatter(Expected expected, double uncertainty) {
        double hand = Math.sqrt(2) * stray(expected);
        return Math.hypot(Math.hypot(hand, uncertainty), ROUNDING_MM);
    }
}
