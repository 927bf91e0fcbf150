package wallplate.task;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The sizes and choices of a task by dotted key: {@code wall.thickness}, {@code support.name}, {@code pitch}.
 *
 * <p>Lengths are real millimetres and angles degrees, both held as {@link Double}; names and choices are held as
 * {@link String}. A part is there where any of its keys is.
 */
public final class Sizes {

    private final Map<String, Object> values;

    private Sizes(Map<String, Object> values) {
        this.values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** Sizes in the order given; each value is a Double or a String. */
    public static Sizes of(Map<String, Object> values) {
        return new Sizes(values);
    }

    /**
     * A length in real millimetres, an angle in degrees or a number of things.
     *
     * @throws IllegalArgumentException where the task has no such number: ask {@link #has} first for optional parts
     */
    public double number(String key) {
        if (values.get(key) instanceof Double number) {
            return number;
        }
        throw new IllegalArgumentException("the task has no number " + key);
    }

    public Optional<String> word(String key) {
        return values.get(key) instanceof String word ? Optional.of(word) : Optional.empty();
    }

    /** Whether the key itself, or any key below it, is in the task. */
    public boolean has(String keyOrPart) {
        return values.containsKey(keyOrPart)
                || values.keySet().stream().anyMatch(key -> key.startsWith(keyOrPart + "."));
    }

    /** Every key with its value, in the order of the detail's own list. */
    public Map<String, Object> asMap() {
        return values;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sizes sizes && sizes.values.equals(values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.toString();
    }
}
