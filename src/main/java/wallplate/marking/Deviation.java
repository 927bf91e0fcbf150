package wallplate.marking;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.solver.Expected;

/**
 * How far a measured value lies from the expected one.
 *
 * @param size millimetres on paper, degrees or things; for a yes or no and for a word 0 where right and infinite where
 *     wrong
 * @param uncertainty one standard deviation of the measured value, in the same unit
 */
record Deviation(double size, double uncertainty) {

    /** Empty where the finding is no value, or not of the expected kind. */
    static Optional<Deviation> between(Expected expected, Finding finding) {
        if (expected instanceof Expected.Size size && finding instanceof Finding.Quantity quantity) {
            return Optional.of(new Deviation(size.deviation(worth(quantity.value())), worth(quantity.uncertainty())));
        }
        if (expected instanceof Expected.Count count && finding instanceof Finding.Count found) {
            return Optional.of(new Deviation(Math.abs(found.number() - count.number()), 0));
        }
        if (expected instanceof Expected.YesNo asked && finding instanceof Finding.YesNo found) {
            return Optional.of(rightOrWrong(asked.yes() == found.yes()));
        }
        if (expected instanceof Expected.Word asked && finding instanceof Finding.Word found) {
            return Optional.of(rightOrWrong(asked.word().equals(found.word())));
        }
        return Optional.empty();
    }

    /** A value as the result files keep it, in thousandths, so that marking from a file gives the same marks. */
    private static double worth(double value) {
        return BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_EVEN).doubleValue();
    }

    private static Deviation rightOrWrong(boolean right) {
        return new Deviation(right ? 0 : Double.POSITIVE_INFINITY, 0);
    }

    /** The least deviation that the uncertainty allows for. */
    double least(double deviations) {
        return Math.max(0, size - deviations * uncertainty);
    }

    /** The greatest deviation that the uncertainty allows for. */
    double greatest(double deviations) {
        return size + deviations * uncertainty;
    }
}
