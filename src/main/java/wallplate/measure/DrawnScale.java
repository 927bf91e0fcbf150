package wallplate.measure;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Whether a whole drawing was made at another of the usual scales, told from everything that was measured on it: long
 * sizes say it best, for a careless hand is off by tenths of a millimetre whatever the length.
 */
final class DrawnScale {

    /** How far off a size is by careless drawing: so much and a share of it, one standard deviation. */
    private static final double CARELESS_MM = 0.6;

    private static final double CARELESS_SHARE = 0.02;
    /** A size that is drawn wrong for reasons of its own speaks against a scale no more than this. */
    private static final double MOST_COST = 4;

    /** Another scale must be so much likelier, in log odds, and so many sizes must agree with it and not with the present one. */
    private static final double CLEARLY_LIKELIER = 6;

    private static final int FEWEST_AGREEING = 4;
    private static final double AGREES = 2;

    /** Sizes under this say nothing about a scale. */
    private static final double SHORTEST_MM = 2;

    private final Expectation expectation;
    private final List<Size> sizes;

    private record Size(double drawnMm, double askedMm) {

        double cost(double factor) {
            double there = factor * askedMm;
            double off = (drawnMm - there) / (CARELESS_MM + CARELESS_SHARE * there);
            return Math.min(MOST_COST, off * off / 2);
        }
    }

    /**
     * @param expectation what the drawing was read with
     * @param findings what was measured, also what was left open
     */
    DrawnScale(Expectation expectation, Findings findings) {
        this.expectation = expectation;
        this.sizes = findings.all().stream().flatMap(this::size).toList();
    }

    /** The factor by which the drawing is larger than asked for, where one of the other scales is clearly likelier than the present one. */
    OptionalDouble another() {
        double present = expectation.scaleFactor();
        double best = Stream.concat(Stream.of(1.0), expectation.otherScaleFactors().stream())
                .reduce(present, (one, other) -> cost(other) < cost(one) ? other : one);
        long agreeing = sizes.stream().filter(size -> size.cost(best) < AGREES && size.cost(present) >= AGREES).count();
        return cost(present) - cost(best) > CLEARLY_LIKELIER && agreeing >= FEWEST_AGREEING
                ? OptionalDouble.of(best)
                : OptionalDouble.empty();
    }

    /**
     * How badly what was measured fits the scale that it was read at, in log odds: what was not measured fits as badly as
     * anything may.
     */
    double misfit() {
        double present = expectation.scaleFactor();
        return sizes.stream().mapToDouble(size -> size.cost(present) - MOST_COST).sum();
    }

    /** Whether a reading of the same sheet at another scale explains it clearly better. */
    boolean isClearlyBetter(DrawnScale other) {
        return misfit() + CLEARLY_LIKELIER < other.misfit();
    }

    private double cost(double factor) {
        return sizes.stream().mapToDouble(size -> size.cost(factor)).sum();
    }

    private Stream<Size> size(Measurement measurement) {
        double asked = expectation.exactOr(measurement.key(), 0) / expectation.scaleFactor();
        if (asked < SHORTEST_MM || measurement.key().equals("roof.pitch")) {
            return Stream.empty();
        }
        Finding finding = measurement.finding();
        if (finding instanceof Finding.Quantity quantity) {
            return Stream.of(new Size(quantity.value(), asked));
        }
        return finding instanceof Finding.Uncertain uncertain && !uncertain.readings().isEmpty()
                ? Stream.of(new Size(uncertain.readings().get(0), asked))
                : Stream.empty();
    }
}
