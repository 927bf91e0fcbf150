package wallplate.samples;

/**
 * A learner's hand: how true, how clean and how heavy the pencil lines come out.
 *
 * @param roundingMm drawn sizes are rounded to this step, 0 for a learner who sets them off exactly
 * @param sizeErrorMm standard deviation of a drawn size
 * @param angleErrorDegrees standard deviation of a single line's direction at 40 mm length
 * @param wobbleMm root mean square of a line's waver about its straight line
 * @param overshootMm typical distance by which a line runs past its corner; half as often it stops short
 * @param doubleStroke share of lines that are gone over a second time, slightly beside
 * @param broken share of lines with a gap
 * @param construction share of lines that have a faint construction line running on
 * @param straying what a line's direction misses its own by
 */
record Learner(
        String neatness,
        double roundingMm,
        double sizeErrorMm,
        double angleErrorDegrees,
        double wobbleMm,
        double overshootMm,
        double doubleStroke,
        double broken,
        double construction,
        PencilGrade pencil,
        Straying straying) {

    /** What lets a line lie off the direction that it should have. */
    enum Straying {
        /** The pencil is set down beside its points: short lines are off by more than long ones. */
        ENDS,
        /** Squares rock on their ruler: a short line is off by as much as a long one, and all boxes on a slope together. */
        SQUARES
    }

    static Learner draw(Chance chance) {
        String neatness = chance.oneOf("neat", "fair", "fair", "careless");
        return draw(neatness, chance);
    }

    static Learner draw(String neatness, Chance chance) {
        double rounding = chance.oneOf(0.0, 0.5, 0.5, 1.0);
        PencilGrade pencil = PencilGrade.draw(chance);
        double construction = chance.happens(0.3) ? 0 : chance.between(0.1, 0.8);
        return switch (neatness) {
            case "neat" -> new Learner(neatness, rounding, 0.08, 0.04, 0.018, 0.2, 0, 0.01, construction, pencil, Straying.ENDS);
            case "fair" -> new Learner(neatness, rounding, 0.18, 0.10, 0.03, 0.4, 0.04, 0.04, construction, pencil, Straying.ENDS);
            case "careless" -> new Learner(neatness, rounding, 0.30, 0.18, 0.05, 0.8, 0.12, 0.1, construction, pencil, Straying.ENDS);
            default -> throw new IllegalArgumentException("a learner is neat, fair or careless, not " + neatness);
        };
    }

    /**
     * The same hand, straying so. How far squares rock is measured on the shared development sheets, whose lines are off
     * by 0.04 to 0.13 degrees, by sheet, whatever their length: lines of 4 mm wave so little there that it does not show.
     */
    Learner straying(Straying other) {
        if (other == straying) {
            return this;
        }
        double degrees = switch (neatness) {
            case "neat" -> 0.05;
            case "fair" -> 0.08;
            default -> 0.11;
        };
        return new Learner(
                neatness, roundingMm, sizeErrorMm, degrees, wobbleMm / 12, overshootMm, doubleStroke, broken, construction, pencil, other);
    }
}
