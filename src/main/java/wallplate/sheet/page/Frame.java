package wallplate.sheet.page;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Segment;

/**
 * The frame round a drawing, in rough millimetres: four long lines, which may be broken off at the page's edges.
 */
public record Frame(Segment bottom, Segment right, Segment top, Segment left) {

    /** From the left line to the right one, halfway up. */
    public double width() {
        return Math.abs(right.line().distanceTo(left.midpoint()));
    }

    /** From the bottom line to the top one, in the middle. */
    public double height() {
        return Math.abs(bottom.line().distanceTo(top.midpoint()));
    }

    /** By how much the worst corner or pair of sides is off square or parallel, in degrees. */
    public double crookednessDegrees() {
        double level = bottom.inclinationDegrees();
        double worst = Angles.between(level, top.inclinationDegrees());
        for (Segment upright : List.of(right, left)) {
            worst = Math.max(worst, Math.abs(Angles.between(level, upright.inclinationDegrees()) - 90));
        }
        return Math.max(worst, Angles.between(left.inclinationDegrees(), right.inclinationDegrees()));
    }

    /**
     * The factor for the page's y millimetres that gives the frame the proportions it was printed with; empty where it
     * was not clearly printed.
     *
     * @param turn how the sheet lies
     * @param scale the bar's nominal length by its rough length, 1 where there is no bar
     */
    public Optional<Double> stretch(Turn turn, double scale, double sheetWidth, double sheetHeight) {
        double level = scale * (turn.isLevelAlongX() ? width() : height());
        double upright = scale * (turn.isLevelAlongX() ? height() : width());
        return new PrintedFrame(sheetWidth, sheetHeight)
                .uprightFactor(level, upright, crookednessDegrees())
                .map(factor -> turn.isLevelAlongX() ? factor : 1 / factor);
    }
}
