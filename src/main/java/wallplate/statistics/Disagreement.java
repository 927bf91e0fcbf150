package wallplate.statistics;

/** How much a pair of different marks counts against agreement. */
@FunctionalInterface
public interface Disagreement {

    /** Every difference counts alike: the unweighted kappa of Cohen (1960). */
    Disagreement ALIKE = (table, first, second) -> first == second ? 0 : 1;

    /** A difference counts by its size. */
    Disagreement LINEAR = (table, first, second) ->
            Math.abs(table.categories().get(first) - table.categories().get(second));

    /** A difference counts by its square, so that two small ones weigh less than a large one. */
    Disagreement QUADRATIC = (table, first, second) -> Math.pow(LINEAR.of(table, first, second), 2);

    /**
     * Weights given outright, as Cohen (1968) wrote them; they need not be symmetric.
     *
     * @param weights by the first marker's category, then by the second's
     */
    static Disagreement given(double[]... weights) {
        return (table, first, second) -> weights[first][second];
    }

    /** The weight of a pair of categories, by their places in the table; 0 is full agreement. */
    double of(RatingTable table, int first, int second);
}
