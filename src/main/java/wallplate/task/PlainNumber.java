package wallplate.task;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as a person writes them: no exponent, no trailing zeros, a point before the fraction. */
public final class PlainNumber {

    private PlainNumber() {}

    /** The shortest text that reads back as the same number. */
    public static String text(double value) {
        return plain(BigDecimal.valueOf(value));
    }

    /** At most the given number of decimals, halves away from zero. */
    public static String text(double value, int decimals) {
        return plain(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
