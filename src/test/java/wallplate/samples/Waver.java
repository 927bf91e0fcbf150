package wallplate.samples;

/** A smooth random deviation along a line, such as a hand's waver or its changing pressure. */
final class Waver {

    private final double[] knots;
    private final double step;

    /** Deviations with about the given standard deviation that change over about the given length. */
    Waver(double length, double correlationMm, double standardDeviation, Chance chance) {
        this.step = correlationMm;
        this.knots = new double[(int) Math.ceil(length / correlationMm) + 3];
        for (int knot = 0; knot < knots.length; knot++) {
            knots[knot] = chance.error(standardDeviation * 1.25);
        }
    }

    double at(double position) {
        double place = Math.max(0, position / step);
        int knot = Math.min(knots.length - 2, (int) place);
        double fraction = Math.min(1, place - knot);
        double smooth = fraction * fraction * (3 - 2 * fraction);
        return knots[knot] + (knots[knot + 1] - knots[knot]) * smooth;
    }
}
