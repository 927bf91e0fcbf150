package wallplate.sheet.page;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** A value and how much it counts. */
record Weighted(double value, double weight) {

    /** The value in the middle of all weights; empty where there is none. */
    static OptionalDouble middle(Stream<Weighted> values) {
        List<Weighted> sorted = values.sorted(Comparator.comparingDouble(Weighted::value)).toList();
        double half = sorted.stream().mapToDouble(Weighted::weight).sum() / 2;
        for (Weighted each : sorted) {
            half -= each.weight;
            if (half <= 0) {
                return OptionalDouble.of(each.value);
            }
        }
        return OptionalDouble.empty();
    }
}
