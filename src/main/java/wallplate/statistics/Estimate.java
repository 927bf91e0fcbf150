package wallplate.statistics;

/** A figure of a sample with the interval in which the figure of all such samples is to be expected. */
public record Estimate(double value, Statistic<Interval> interval) {}
