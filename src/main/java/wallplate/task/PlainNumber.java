package wallplate.task;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;

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

    /** The number that was typed, with a decimal point or a decimal comma; empty where it is none. */
    public static OptionalDouble read(String typed) {
        try {
            return OptionalDouble.of(Double.parseDouble(typed.strip().replace(',', '.')));
        } catch (NumberFormatException notANumber) {
            return OptionalDouble.empty();
        }
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
