package wallplate.statistics;

/**
 * A criterion, question or other thing that marks are given for.
 *
 * @param maximum the most marks it brings
 */
public record ScoredItem(String id, String title, double maximum) {}
