package wallplate.task;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wallplate.task.yaml.Entry;

/** Takes the marking guideline over as plain values; of its meaning only the tolerances are checked here. */
final class MarkingCheck {

    private static final String KEY = "marking";
    private static final String TOLERANCE = "marking.tolerance";
    private static final Set<String> TOLERANCES = new LinkedHashSet<>(List.of("length", "thickness", "angle"));
    private static final double SMALLEST_TOLERANCE = 0.01;
    private static final double LARGEST_TOLERANCE = 50;

    private final EntryReader reader;

    MarkingCheck(EntryReader reader) {
        this.reader = reader;
    }

    /** Maps, lists, texts, numbers and truth values; empty where the default guideline applies. */
    Map<String, Object> marking() {
        Optional<Entry> found = reader.at(KEY);
        if (found.isEmpty() || EntryReader.isNothing(found.get())) {
            return Map.of();
        }
        if (!(found.get() instanceof Entry.Group group)) {
            reader.fault(KEY, found.get().shown(), "a group of keys, such as tolerance; or leave it out");
            return Map.of();
        }
        reader.at(TOLERANCE).ifPresent(this::checkTolerances);
        return plainGroup(KEY, group);
    }

    private void checkTolerances(Entry found) {
        if (!(found instanceof Entry.Group tolerances)) {
            reader.fault(TOLERANCE, found.shown(), "a group of the keys " + String.join(", ", TOLERANCES));
            return;
        }
        String accepted = "a number from %s to %s: millimetres on paper, degrees for the angle"
                .formatted(PlainNumber.text(SMALLEST_TOLERANCE), PlainNumber.text(LARGEST_TOLERANCE));
        tolerances.entries().keySet().forEach(key -> {
            String path = TOLERANCE + "." + key;
            if (TOLERANCES.contains(key)) {
                reader.numberWithin(path, SMALLEST_TOLERANCE, LARGEST_TOLERANCE, accepted);
            } else {
                reader.unknownKey(path, key, TOLERANCES);
            }
        });
    }

    private Map<String, Object> plainGroup(String path, Entry.Group group) {
        Map<String, Object> plain = new LinkedHashMap<>();
        group.entries()
                .forEach((key, entry) -> plain(path + "." + key, entry).ifPresent(value -> plain.put(key, value)));
        return plain;
    }

    private Optional<?> plain(String path, Entry entry) {
        if (entry instanceof Entry.Group group) {
            return Optional.of(plainGroup(path, group));
        }
        return entry instanceof Entry.Row row
                ? Optional.of(plainRow(path, row))
                : plainValue(path, (Entry.Scalar) entry);
    }

    private List<Object> plainRow(String path, Entry.Row row) {
        List<Object> values = new ArrayList<>();
        for (Entry element : row.entries()) {
            plain(path + "[" + (values.size() + 1) + "]", element).ifPresent(values::add);
        }
        return values;
    }

    private Optional<?> plainValue(String path, Entry.Scalar typed) {
        if (typed.kind() == Entry.Kind.NOTHING) {
            reader.fault(path, "", "a value, or no such key");
            return Optional.empty();
        }
        if (typed.quoted()) {
            return Optional.of(typed.text());
        }
        return switch (typed.kind()) {
            case WHOLE_NUMBER, FRACTION ->
                reader.number(path, typed, "a plain number, or text in quotes").map(MarkingCheck::wholeWherePossible);
            case YES_OR_NO ->
                Optional.of(Set.of("true", "yes", "on").contains(typed.text().toLowerCase(Locale.ROOT)));
            case TEXT, NOTHING -> Optional.of(typed.text());
        };
    }

    private static Number wholeWherePossible(double value) {
        boolean whole = value == Math.rint(value) && Math.abs(value) <= Integer.MAX_VALUE;
        if (whole) {
            return (int) value;
        }
        return value;
    }
}
