package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Readings of one place by how unlikely each is: the likeliest, and whether another that gives a different value comes
 * so near that nobody could tell.
 */
final class Ranking<T> {

    private record Reading<T>(T reading, double value, double cost) {}

    private final double mostCost;
    private final List<Reading<T>> readings = new ArrayList<>();

    /** A ranking that takes no reading whose cost reaches the most allowed. */
    Ranking(double mostCost) {
        this.mostCost = mostCost;
    }

    /**
     * Offers a reading.
     *
     * @param value the length that it would give
     * @param cost how unlikely it is; 0 for a perfect one
     */
    void offer(T reading, double value, double cost) {
        if (cost < mostCost) {
            readings.add(new Reading<>(reading, value, cost));
        }
    }

    Optional<T> best() {
        return first().map(Reading::reading);
    }

    private Optional<Reading<T>> first() {
        Reading<T> best = null;
        for (Reading<T> reading : readings) {
            if (best == null || reading.cost < best.cost) {
                best = reading;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * The value of another reading that is nearly as likely as the best.
     *
     * @param apart how different its value must be
     * @param margin how much dearer it may be
     */
    Optional<Double> rival(double apart, double margin) {
        Optional<Reading<T>> best = first();
        return best.flatMap(chosen -> readings.stream()
                .filter(other -> Math.abs(other.value - chosen.value) > apart && other.cost < chosen.cost + margin)
                .min((a, b) -> Double.compare(a.cost, b.cost))
                .map(Reading::value));
    }
}
