package wallplate.marking;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.Scale;

/**
 * Tells when a whole sheet was drawn at another scale than the one asked for.
 *
 * <p>One size never says so, since it may be wrong for many reasons; a scale is named where most of the sheet's lengths fit
 * it and few fit the right one. Which scales stand on rulers is common practice, with no published source.
 */
final class DrawnScale {

    private static final List<Integer> ON_RULERS = List.of(5, 10, 15, 20, 25, 30, 40, 50, 75, 100);
    /** Fewer lengths than this prove no scale. */
    private static final int FEWEST = 6;
    /** The share of the lengths that must fit the other scale. */
    private static final double MOST = 0.7;
    /** The share of the lengths that may fit the right one. */
    private static final double FEW = 0.34;
    /** A length fits a scale within this share of it, drawing included, but never less than the least deviation. */
    private static final double SHARE = 0.08;
    private static final double LEAST_MM = 0.4;

    private final Scale asked;
    private final List<Drawn> lengths;

    /** A length as asked and as drawn, in millimetres on paper. */
    private record Drawn(double askedMm, double drawnMm) {
        boolean fits(double factor) {
            double wanted = askedMm * factor;
            return Math.abs(drawnMm - wanted) <= Math.max(LEAST_MM, SHARE * wanted);
        }
    }

    DrawnScale(ExpectedDrawing expected, MeasuredSheet measured) {
        this.asked = expected.task().scale();
        this.lengths = expected.values().stream()
                .filter(value -> value instanceof Expected.Length length && length.exactMm() > 0)
                .flatMap(value -> measured.measurement(value.key()).stream()
                        .filter(found -> found.finding() instanceof Finding.Quantity)
                        .map(found -> new Drawn(
                                ((Expected.Length) value).exactMm(), ((Finding.Quantity) found.finding()).value())))
                .toList();
    }

    /** The scale that the sheet seems to be drawn at; empty where it is the one asked, or none is sure. */
    Optional<Scale> otherThanAsked() {
        if (lengths.size() < FEWEST || shareFitting(1) > FEW) {
            return Optional.empty();
        }
        return ON_RULERS.stream()
                .filter(scale -> scale != asked.denominator())
                .max(Comparator.comparingDouble((Integer scale) -> shareFitting(factor(scale))))
                .filter(scale -> shareFitting(factor(scale)) >= MOST)
                .map(scale -> new Scale(scale));
    }

    /** Whether a length is what the sheet's own scale makes of it. */
    static boolean explains(Scale drawn, Scale asked, double askedMm, double drawnMm) {
        return new Drawn(askedMm, drawnMm).fits(asked.denominator() / drawn.denominator());
    }

    private double factor(double scale) {
        return asked.denominator() / scale;
    }

    private double shareFitting(double factor) {
        return (double) lengths.stream().filter(length -> length.fits(factor)).count() / lengths.size();
    }
}
