package wallplate.solver.parts;

import wallplate.solver.Expected;
import wallplate.task.PlainNumber;
import wallplate.task.Scale;

/** Real sizes to paper lengths with the line of arithmetic that a learner would write. */
public final class Working {

    /** Decimals shown of a division that does not come out. */
    private static final int DECIMALS = 2;

    /** Below this, in millimetres, two paper lengths are the same number but for the computer's arithmetic. */
    private static final double ARITHMETIC_NOISE = 1e-9;

    private Working() {}

    /** A size of the task, divided by the scale. */
    public static Expected.Length length(String key, double realMm, Scale scale) {
        return length(key, realMm, scale, "");
    }

    /**
     * A size that first has to be found.
     *
     * @param before how the real size is found, ending in a full stop or semicolon; empty where the task states it
     */
    public static Expected.Length length(String key, double realMm, Scale scale, String before) {
        double exact = scale.onPaper(realMm);
        double drawn = roundedHalvesUp(exact);
        return new Expected.Length(key, realMm, exact, drawn, before + division(realMm, scale) + drawnAs(exact, drawn));
    }

    /** Such as {@code 900 / 20 = 45 mm}. */
    public static String division(double realMm, Scale scale) {
        double exact = scale.onPaper(realMm);
        String sign = comesOut(exact) ? "=" : "≈";
        return "%s / %s %s %s mm"
                .formatted(
                        PlainNumber.text(realMm, DECIMALS),
                        PlainNumber.text(scale.denominator()),
                        sign,
                        PlainNumber.text(exact, DECIMALS));
    }

    /** The nearest whole millimetre, halves up; the arithmetic's own error never turns a half downwards. */
    public static double roundedHalvesUp(double mm) {
        return Math.floor(mm + 0.5 + ARITHMETIC_NOISE);
    }

    private static boolean comesOut(double exact) {
        return Math.abs(exact * 100 - Math.rint(exact * 100)) < 1e-6;
    }

    private static String drawnAs(double exact, double drawn) {
        boolean whole = Math.abs(exact - drawn) < ARITHMETIC_NOISE;
        return whole || drawn == 0 ? "" : ", drawn %s mm".formatted(PlainNumber.text(drawn));
    }
}
