package wallplate.statistics;

import java.util.List;

/** Two markers' marks for the same sheets in the same order. */
final class Pairs {

    private Pairs() {}

    static void requireSameSize(List<Double> first, List<Double> second) {
        if (first.size() != second.size()) {
            throw new IllegalArgumentException("%d first marks and %d second marks; right would be as many of either"
                    .formatted(first.size(), second.size()));
        }
    }
}
