package wallplate.statistics;

/**
 * What the marks of a class say about one item.
 *
 * @param place its place among the items, from 1
 * @param facility the mean mark as a part of the maximum: 0 is hard, 1 is easy
 * @param standardDeviation of the marks, with n - 1
 * @param discrimination the upper against the lower 27 %
 * @param withTotal the correlation of its marks with the totals; for right or wrong items the point-biserial one
 * @param withRest the same with its own marks taken out of the totals
 * @param alphaWithout Cronbach's alpha of the other items
 */
public record ItemFigures(
        int place,
        ScoredItem item,
        Statistic<Double> facility,
        Statistic<Double> standardDeviation,
        Statistic<Double> discrimination,
        Statistic<Double> withTotal,
        Statistic<Double> withRest,
        Statistic<Double> alphaWithout) {}
