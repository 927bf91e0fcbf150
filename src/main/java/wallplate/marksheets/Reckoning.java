package wallplate.marksheets;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.hipparchus.fraction.BigFraction;

/**
 * How the entries of a line become one percentage.
 *
 * <ol>
 *   <li>The share of a task is marks awarded divided by marks available.
 *   <li>A late sheet first loses so many hundredths of the marks available, but never falls below 0.
 *   <li>Absent is a share of 0. An excused task is left out, and so is its weight.
 *   <li>The percentage is 100 times the sum of weight times share, divided by the sum of the weights that count.
 *   <li>It is reckoned in exact fractions and rounded once, at the end, to one decimal; a half is rounded up.
 *   <li>With an open entry there is no percentage yet; where no task counts there is none.
 * </ol>
 */
public final class Reckoning {

    private static final int DECIMALS = 1;
    private static final BigFraction HUNDRED = new BigFraction(100);

    private final List<BigDecimal> weights;
    private final int latePercent;

    /** @param weights by column, each above 0 */
    public Reckoning(List<BigDecimal> weights, int latePercent) {
        this.weights = List.copyOf(weights);
        this.latePercent = latePercent;
    }

    /** What a line comes to. */
    public sealed interface Result {

        /** Empty where there is none, or none yet. */
        default Optional<BigDecimal> percentage() {
            return Optional.empty();
        }

        /** Whether there is none because an entry is open. */
        default boolean isOpen() {
            return false;
        }
    }

    /** @param percent with one decimal */
    public record Percentage(BigDecimal percent) implements Result {
        @Override
        public Optional<BigDecimal> percentage() {
            return Optional.of(percent);
        }
    }

    /** @param open how many entries are open */
    public record NotYet(int open) implements Result {
        @Override
        public boolean isOpen() {
            return true;
        }
    }

    /** Every task is excused. */
    public record NothingCounts() implements Result {}

    /** @param entries by column */
    public Result of(List<Entry> entries) {
        int open = (int) entries.stream().filter(entry -> entry.standing() == Standing.OPEN).count();
        if (open > 0) {
            return new NotYet(open);
        }
        BigFraction sum = BigFraction.ZERO;
        BigFraction weight = BigFraction.ZERO;
        for (int column = 0; column < entries.size(); column++) {
            Entry entry = entries.get(column);
            if (entry.standing() != Standing.EXCUSED) {
                BigFraction own = exact(weights.get(column));
                weight = weight.add(own);
                sum = sum.add(own.multiply(share(entry)));
            }
        }
        return weight.equals(BigFraction.ZERO)
                ? new NothingCounts()
                : new Percentage(rounded(sum.divide(weight).multiply(HUNDRED)));
    }

    private BigFraction share(Entry entry) {
        return entry.standing() == Standing.ABSENT
                ? BigFraction.ZERO
                : exact(counted(entry)).divide(exact(entry.available()));
    }

    /** The marks of an entry that count: what a late sheet loses is taken off, absent is 0. */
    public BigDecimal counted(Entry entry) {
        return switch (entry.standing()) {
            case MARKED -> entry.awarded();
            case LATE -> entry.awarded()
                    .subtract(entry.available().multiply(BigDecimal.valueOf(latePercent, 2)))
                    .max(BigDecimal.ZERO);
            case ABSENT, EXCUSED, OPEN -> BigDecimal.ZERO;
        };
    }

    private static BigFraction exact(BigDecimal number) {
        BigDecimal plain = number.setScale(Math.max(0, number.scale()));
        return new BigFraction(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()));
    }

    private static BigDecimal rounded(BigFraction percent) {
        return new BigDecimal(percent.getNumerator())
                .divide(new BigDecimal(percent.getDenominator()), DECIMALS, RoundingMode.HALF_UP);
    }
}
