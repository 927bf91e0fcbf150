package wallplate.marking;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import wallplate.task.Fault;

/** A part of a guideline's file with the place where it stands; what is wrong in it is added to the faults. */
final class GuidelineEntry {

    private final String place;
    private final Map<String, Object> content;
    private final List<Fault> faults;

    GuidelineEntry(String place, Map<String, Object> content, List<Fault> faults) {
        this.place = place;
        this.content = content;
        this.faults = faults;
    }

    /** Whether a key stands here, whatever its value. */
    boolean has(String key) {
        return content.containsKey(key);
    }

    /** The value of a key as it stands; null where it is missing. */
    @Nullable
    Object value(String key) {
        return content.get(key);
    }

    Set<String> keys() {
        return content.keySet();
    }

    void fault(String key, @Nullable Object found, String accepted) {
        faults.add(new Fault(place + "." + key, found == null ? "" : String.valueOf(found), accepted));
    }

    void allowOnly(Set<String> known) {
        content.keySet().stream()
                .filter(key -> !known.contains(key))
                .sorted()
                .forEach(key -> fault(
                        key, content.get(key), "no such key; known are " + String.join(", ", new TreeSet<>(known))));
    }

    Optional<GuidelineEntry> entry(String key) {
        Object value = content.get(key);
        if (value == null) {
            return Optional.empty();
        }
        return asEntry(place + "." + key, key, value);
    }

    Optional<GuidelineEntry> listEntry(String key, int index, @Nullable Object value) {
        return asEntry("%s.%s[%d]".formatted(place, key, index + 1), key, value);
    }

    private Optional<GuidelineEntry> asEntry(String at, String key, @Nullable Object value) {
        if (!(value instanceof Map<?, ?> map)) {
            fault(key, value, "keys with values");
            return Optional.empty();
        }
        Map<String, Object> entries = new LinkedHashMap<>();
        map.forEach((name, content) -> {
            if (content != null) {
                entries.put(String.valueOf(name), content);
            }
        });
        return Optional.of(new GuidelineEntry(at, entries, faults));
    }

    Optional<String> text(String key) {
        Object value = content.get(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof Map
                || value instanceof List
                || String.valueOf(value).isBlank()) {
            fault(key, value, "a text");
            return Optional.empty();
        }
        return Optional.of(String.valueOf(value));
    }

    Optional<Double> number(String key, double least, double most) {
        Object value = content.get(key);
        if (value == null) {
            return Optional.empty();
        }
        if (!(value instanceof Number number) || !(number.doubleValue() >= least && number.doubleValue() <= most)) {
            fault(key, value, "a number from %s to %s".formatted(plain(least), plain(most)));
            return Optional.empty();
        }
        return Optional.of(number.doubleValue());
    }

    Optional<Double> marks(String key) {
        Object value = content.get(key);
        if (!(value instanceof Number number)
                || number.doubleValue() < 0
                || number.doubleValue() > 100
                || number.doubleValue() * 2 != Math.rint(number.doubleValue() * 2)) {
            fault(key, value, "marks in steps of a half, from 0 to 100");
            return Optional.empty();
        }
        return Optional.of(number.doubleValue());
    }

    Optional<Boolean> yesNo(String key) {
        Object value = content.get(key);
        if (value == null) {
            return Optional.empty();
        }
        if (!(value instanceof Boolean yes)) {
            fault(key, value, "true or false");
            return Optional.empty();
        }
        return Optional.of(yes);
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? String.valueOf((long) number) : String.valueOf(number);
    }
}
