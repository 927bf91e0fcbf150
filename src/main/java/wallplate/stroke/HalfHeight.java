package wallplate.stroke;

import java.util.OptionalDouble;

/** Where the ink across a stroke has fallen to half of its peak, which is how broad a stroke is said to be. */
public final class HalfHeight {

    private HalfHeight() {}

    /**
     * How many steps from a peak, in parts of a step; empty where the ink stays higher up to the last value, or there is none.
     *
     * @param ink at equal steps across the stroke
     * @param peak the index of the peak
     * @param direction 1 towards the last value, -1 towards the first
     */
    public static OptionalDouble stepsFrom(double[] ink, int peak, int direction) {
        if (ink[peak] <= 0) {
            return OptionalDouble.empty();
        }
        double half = ink[peak] / 2;
        int at = peak;
        while (ink[at] > half) {
            at += direction;
            if (at < 0 || at >= ink.length) {
                return OptionalDouble.empty();
            }
        }
        double before = ink[at - direction];
        return OptionalDouble.of(Math.abs(at - peak) - 1 + (before - half) / (before - ink[at]));
    }
}
