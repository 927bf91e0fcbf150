package wallplate.statistics;

/** A two-sided 95 % confidence interval, in the unit of its figure. */
public record Interval(double lower, double upper) {

    /** The part of samples in which such an interval holds the true figure. */
    public static final double CONFIDENCE = 0.95;

    /** The probability below which the upper end lies. */
    static final double UPPER_TAIL = (1 + CONFIDENCE) / 2;

    static final double LOWER_TAIL = (1 - CONFIDENCE) / 2;

    public Interval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("an interval from " + lower + " to " + upper + "; right would be from low to high");
        }
    }

    public boolean contains(double value) {
        return lower <= value && value <= upper;
    }
}
