package wallplate.task;

/** A reduction such as 1:20: one millimetre on paper stands for {@code denominator} real millimetres. */
public record Scale(double denominator) {

    public Scale {
        if (!(denominator > 0)) {
            throw new IllegalArgumentException("a scale's denominator must be positive, not " + denominator);
        }
    }

    public double onPaper(double realMm) {
        return realMm / denominator;
    }

    @Override
    public String toString() {
        return denominator == Math.rint(denominator) ? "1:" + (long) denominator : "1:" + denominator;
    }
}
