package wallplate.solver;

/**
 * A length divided into the fewest equal spaces that are none wider than allowed.
 *
 * <p>The number is the length divided by the widest space, rounded up; the spacing is the length divided by the number.
 *
 * @param spaces at least 1; there is one thing more than there are spaces
 */
public record EqualSpacing(double length, int spaces) {

    /** Arithmetic noise, as a share of one space, that does not make another space of an exact division. */
    private static final double NOISE = 1e-9;

    public EqualSpacing {
        if (!(length > 0) || spaces < 1) {
            throw new IllegalArgumentException("cannot divide %s into %d spaces".formatted(length, spaces));
        }
    }

    public static EqualSpacing ofAtMost(double length, double widest) {
        return new EqualSpacing(length, Math.max(1, (int) Math.ceil(length / widest - NOISE)));
    }

    public double spacing() {
        return length / spaces;
    }

    /** The number of battens, purlins or branders, with one at either end. */
    public int members() {
        return spaces + 1;
    }
}
