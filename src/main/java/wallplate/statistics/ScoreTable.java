package wallplate.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The marks of several learners for the same items.
 *
 * <p>A learner with a missing mark is left out as a whole, so that every figure rests on the same learners.
 *
 * @param rows a learner's marks in the order of the items
 * @param leftOut learners who were left out because a mark is missing
 */
public record ScoreTable(List<ScoredItem> items, List<List<Double>> rows, int leftOut) {

    public ScoreTable {
        items = List.copyOf(items);
        rows = rows.stream().map(List::copyOf).toList();
        int size = items.size();
        if (rows.stream().anyMatch(row -> row.size() != size)) {
            throw new IllegalArgumentException("a row that has not a mark for each of " + size + " items");
        }
    }

    /**
     * The table of those who have a mark for every item.
     *
     * @param marks a learner's marks by item id; an id that is not there is a missing mark
     */
    public static ScoreTable of(List<ScoredItem> items, List<Map<String, Double>> marks) {
        List<List<Double>> rows = new ArrayList<>();
        for (Map<String, Double> learner : marks) {
            if (items.stream().allMatch(item -> learner.containsKey(item.id()))) {
                rows.add(items.stream().map(item -> learner.get(item.id())).toList());
            }
        }
        return new ScoreTable(items, rows, marks.size() - rows.size());
    }

    public int learners() {
        return rows.size();
    }

    double[] marks(int item) {
        return rows.stream().mapToDouble(row -> row.get(item)).toArray();
    }

    double[] totals() {
        return rows.stream()
                .mapToDouble(row -> row.stream().mapToDouble(Double::doubleValue).sum())
                .toArray();
    }

    /** The same learners without one item. */
    ScoreTable without(int item) {
        return new ScoreTable(
                but(items, item), rows.stream().map(row -> but(row, item)).toList(), leftOut);
    }

    private static <T> List<T> but(List<T> all, int index) {
        List<T> rest = new ArrayList<>(all);
        rest.remove(index);
        return rest;
    }
}
