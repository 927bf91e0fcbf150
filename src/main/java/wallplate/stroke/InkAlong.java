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

    /** The share of the steps from one to before another that have at least the given ink; 0 for no steps. */
    public double share(int from, int to, double ink) {
        int first = Math.max(0, from);
        int last = Math.min(values.length, to);
        if (last <= first) {
            return 0;
        }
        int inked = 0;
        for (int step = first; step < last; step++) {
            if (values[step] >= ink) {
                inked++;
            }
        }
        return inked / (double) (last - first);
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
