package wallplate.solver;

/**
 * Between what values, and in what steps, one size may be changed for a variant.
 *
 * @param key the size in the task, such as {@code rafter.overhang}
 * @param lowest real millimetres or degrees, itself allowed
 * @param highest itself allowed
 * @param step the values allowed are the lowest one and every step from there
 */
public record VariantRange(String key, double lowest, double highest, double step) {

    public VariantRange {
        if (!(lowest <= highest) || !(step > 0)) {
            throw new IllegalArgumentException(
                    "%s: from %s to %s in steps of %s is no range".formatted(key, lowest, highest, step));
        }
    }

    int values() {
        return 1 + (int) Math.floor((highest - lowest) / step + 1e-9);
    }

    double value(int index) {
        return lowest + index * step;
    }
}
