package wallplate.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How often two markers gave which pair of marks.
 *
 * @param categories the marks that were given, from the lowest up; what nobody gave changes no figure and may be missing
 * @param counts by the first marker's category, then by the second's
 */
public record RatingTable(List<Double> categories, List<List<Integer>> counts) {

    public RatingTable {
        categories = List.copyOf(categories);
        counts = counts.stream().map(List::copyOf).toList();
        int size = categories.size();
        if (counts.size() != size || counts.stream().anyMatch(row -> row.size() != size)) {
            throw new IllegalArgumentException("a table of " + counts.size() + " rows for " + size
                    + " categories; right would be as many rows and columns as categories");
        }
        if (counts.stream().flatMap(List::stream).anyMatch(count -> count < 0)) {
            throw new IllegalArgumentException("a negative count; right would be 0 or more");
        }
    }

    /** A table whose categories lie one apart, as 0, 1, 2, and so on. */
    public static RatingTable ofCounts(int[]... counts) {
        return new RatingTable(
                DoubleStream.iterate(0, category -> category + 1)
                        .limit(counts.length)
                        .boxed()
                        .toList(),
                Arrays.stream(counts)
                        .map(row -> Arrays.stream(row).boxed().toList())
                        .toList());
    }

    /** The table of two markers' marks for the same sheets in the same order. */
    public static RatingTable of(List<Double> first, List<Double> second) {
        Pairs.requireSameSize(first, second);
        List<Double> categories = DoubleStream.concat(doubles(first), doubles(second))
                .distinct()
                .sorted()
                .boxed()
                .toList();
        Integer[][] counts = new Integer[categories.size()][categories.size()];
        Arrays.stream(counts).forEach(row -> Arrays.fill(row, 0));
        for (int sheet = 0; sheet < first.size(); sheet++) {
            counts[categories.indexOf(first.get(sheet))][categories.indexOf(second.get(sheet))]++;
        }
        return new RatingTable(categories, Arrays.stream(counts).map(List::of).toList());
    }

    private static DoubleStream doubles(List<Double> marks) {
        return marks.stream().mapToDouble(Double::doubleValue);
    }

    public int size() {
        return categories.size();
    }

    public int total() {
        return counts.stream().flatMap(List::stream).mapToInt(Integer::intValue).sum();
    }

    /** The counts as parts of all of them. */
    double[][] proportions() {
        double total = total();
        return counts.stream()
                .map(row -> row.stream().mapToDouble(count -> count / total).toArray())
                .toArray(double[][]::new);
    }
}
