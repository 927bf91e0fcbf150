package wallplate.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ValueNode;

/** Numbers as the files have them: rounded, with a point, never in scientific notation. */
final class Numbers {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private Numbers() {}

    /** A measured or expected number to so many decimals, without trailing noughts beyond the first. */
    static ValueNode rounded(double value, int decimals) {
        BigDecimal number = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return NODES.numberNode(number.scale() < 1 ? number.setScale(1) : number);
    }

    /** Marks, whole where they are whole. */
    static ValueNode marks(double marks) {
        return NODES.numberNode(plainMarks(marks));
    }

    static String text(double marks) {
        return plainMarks(marks).toPlainString();
    }

    private static BigDecimal plainMarks(double marks) {
        BigDecimal number = BigDecimal.valueOf(marks).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0) : number;
    }
}
