package wallplate.stroke;

import java.util.Arrays;

/** The ink met on the way along a line, in steps of equal length. */
public final class InkAlong {

    private final float[] values;

    InkAlong(float[] values) {
        this.values = values.clone();
    }

    public int steps() {
        return values.length;
    }

    /** The ink of one step, from 0 to 255. */
    public double at(int step) {
        return values[step];
    }

    /** The value below which half of the steps lie. */
    public double median() {
        if (values.length == 0) {
            return 0;
        }
        float[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
