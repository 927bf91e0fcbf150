package wallplate.drafting.paper;

/** Numbers written short for files: no more than three decimals, no trailing zeros, always a full stop. */
public final class Decimals {

    private Decimals() {}

    /** Appends a number rounded to a thousandth. */
    public static void append(StringBuilder text, double value) {
        long thousandths = Math.round(value * 1000);
        if (thousandths < 0) {
            text.append('-');
            thousandths = -thousandths;
        }
        text.append(thousandths / 1000);
        long fraction = thousandths % 1000;
        if (fraction == 0) {
            return;
        }
        text.append('.').append((char) ('0' + fraction / 100));
        if (fraction % 100 != 0) {
            text.append((char) ('0' + fraction / 10 % 10));
        }
        if (fraction % 10 != 0) {
            text.append((char) ('0' + fraction % 10));
        }
    }

    /** A size as it is lettered: up to two decimals. */
    public static String figure(double value) {
        StringBuilder text = new StringBuilder(8);
        append(text, Math.rint(value * 100) / 100);
        return text.toString();
    }
}
