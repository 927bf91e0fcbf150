package wallplate.marking;

/**
 * What is accepted of a line's breadth, darkness or ends.
 *
 * @param from not more than {@code to}
 * @param to in the same unit
 */
public record LineRange(double from, double to) {

    public LineRange {
        if (!(from >= 0 && to >= from) || Double.isInfinite(to)) {
            throw new IllegalArgumentException("from %s to %s is no range of nought or more".formatted(from, to));
        }
    }

    /** How far a value lies outside; nought inside. */
    double beyond(double value) {
        return Math.max(0, Math.max(from - value, value - to));
    }
}
