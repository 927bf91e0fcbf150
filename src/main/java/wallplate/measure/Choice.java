package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * Readings of one place, of which one is right or none, with the odds of each: a conditional logit (D. McFadden,
 * "Conditional logit analysis of qualitative choice behavior", 1974). A reading's utility is the weighted sum of its
 * traits; the probabilities are the exponentials of the utilities, made to sum to one together with that of a right reading
 * which was not offered.
 *
 * <p>The weights were fitted to sheets of known truth and are the same for every sheet, so that a probability of 0.9 means
 * that about nine in ten such readings are right.
 */
final class Choice<T extends Reading> {

    /** A reading is stated where so much of the probability lies with it and with those that say the same. */
    static final double SURE = 0.7;

    /**
     * The same for the choices whose odds are too cautious: of the plates, gutters' sides and covering's ends that were read
     * with a probability between this and {@link #SURE} on sheets of known truth, all were right.
     */
    static final double LIKELY = 0.6;

    /**
     * One reading.
     *
     * @param traits the numbers that speak for or against it, in the order of the weights
     */
    record Option<T extends Reading>(T reading, double[] traits, double utility) {}

    private final Weights weights;
    private final List<Option<T>> options = new ArrayList<>();

    Choice(Weights weights) {
        this.weights = weights;
    }

    void offer(T reading, double... traits) {
        options.add(new Option<>(reading, traits, weights.utility(traits)));
    }

    Weights weights() {
        return weights;
    }

    List<Option<T>> options() {
        return List.copyOf(options);
    }

    /** The likeliest reading; empty where none was offered. */
    Optional<T> best() {
        return options.stream().max(Comparator.comparingDouble(Option::utility)).map(Option::reading);
    }

    /** By how much the likeliest reading's utility exceeds that of one that was not offered; empty where none was offered. */
    OptionalDouble lead() {
        OptionalDouble most = options.stream().mapToDouble(Option::utility).max();
        return most.isEmpty() ? most : OptionalDouble.of(most.getAsDouble() - weights.noneOffered());
    }

    /** The probability that one of the readings with a property is the right one; 0 where none was offered. */
    double probability(Predicate<T> property) {
        if (options.isEmpty()) {
            return 0;
        }
        double most = Math.max(
                weights.noneOffered(), options.stream().mapToDouble(Option::utility).max().orElseThrow());
        double all = Math.exp(weights.noneOffered() - most);
        double wanted = 0;
        for (Option<T> option : options) {
            double odds = Math.exp(option.utility - most);
            all += odds;
            wanted += property.test(option.reading) ? odds : 0;
        }
        return wanted / all;
    }

    /** The likeliest reading without a property. */
    Optional<T> bestWithout(Predicate<T> property) {
        return options.stream()
                .filter(option -> !property.test(option.reading))
                .max(Comparator.comparingDouble(Option::utility))
                .map(Option::reading);
    }
}
