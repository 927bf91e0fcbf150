package wallplate.tables;

import java.math.BigDecimal;

/** One cell of a list that is written. */
public sealed interface Cell {

    /** A text, whatever it looks like. */
    record Text(String text) implements Cell {}

    /** A number, shown with as many decimals as its scale has. */
    record Number(BigDecimal value) implements Cell {}

    static Cell of(String text) {
        return new Text(text);
    }

    static Cell of(BigDecimal value) {
        return new Number(value);
    }

    static Cell of(long value) {
        return new Number(BigDecimal.valueOf(value));
    }
}
