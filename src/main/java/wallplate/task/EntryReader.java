package wallplate.task;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import wallplate.task.yaml.Entry;

/**
 * Takes single values out of a task's entries, by dotted key, and notes a fault for each that is not as it should
 * be.
 */
final class EntryReader {

    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d{1,12}(\\.\\d{0,12})?|\\.\\d{1,12})");
    private static final Pattern NUMBER_WITH_UNIT =
            Pattern.compile("[-+]?\\d[\\d.,]*\\s*(mm|cm|m|deg|degrees|°|in|ft|')");
    private static final Pattern NUMBER_WITH_COMMA = Pattern.compile("[-+]?\\d+,\\d+");

    /** YAML 1.1 reads a whole number with a leading nought in base eight, a person does not: neither is guessed. */
    private static final Pattern LEADING_NOUGHT = Pattern.compile("[-+]?0\\d+(\\..*)?");

    private final Entry.Group top;
    private final List<Fault> faults;

    EntryReader(Entry.Group top, List<Fault> faultsSoFar) {
        this.top = top;
        this.faults = new ArrayList<>(faultsSoFar);
    }

    Entry.Group top() {
        return top;
    }

    List<Fault> faults() {
        return List.copyOf(faults);
    }

    void fault(String key, String found, String accepted) {
        faults.add(new Fault(key, found, accepted));
    }

    void unknownKey(String key, String word, Set<String> known) {
        String meant = NearestWord.among(known, word)
                .map("; perhaps %s is meant"::formatted)
                .orElse("");
        fault(key, "a key that is not known here", "only " + String.join(", ", known) + meant);
    }

    /** What stands at a key; empty where nothing does, or where something above it is not a group. */
    Optional<Entry> at(String dottedKey) {
        Optional<Entry> place = Optional.of(top);
        for (String key : dottedKey.split("\\.")) {
            place = place.flatMap(entry -> entry instanceof Entry.Group group ? group.get(key) : Optional.empty());
        }
        return place;
    }

    /** Whether a group above the key holds a single value: that is reported once, not for each key below it. */
    boolean isBelowSingleValue(String dottedKey) {
        for (int dot = dottedKey.indexOf('.'); dot >= 0; dot = dottedKey.indexOf('.', dot + 1)) {
            Optional<Entry> above = at(dottedKey.substring(0, dot));
            if (above.isPresent() && !(above.get() instanceof Entry.Group)) {
                return true;
            }
        }
        return false;
    }

    Optional<Entry.Scalar> scalar(String key, String accepted) {
        return scalar(key, at(key), accepted);
    }

    Optional<Entry.Scalar> scalar(String key, Optional<? extends Entry> found, String accepted) {
        if (found.isEmpty() || isNothing(found.get())) {
            fault(key, "", accepted);
            return Optional.empty();
        }
        if (found.get() instanceof Entry.Scalar scalar) {
            return Optional.of(scalar);
        }
        fault(key, found.get().shown(), accepted);
        return Optional.empty();
    }

    static boolean isNothing(Entry entry) {
        return entry instanceof Entry.Scalar scalar
                && (scalar.kind() == Entry.Kind.NOTHING || scalar.text().isBlank());
    }

    Optional<String> line(String key, int longest, String accepted) {
        return scalar(key, accepted).flatMap(typed -> {
            String text = typed.text().strip();
            if (text.length() <= longest && text.chars().noneMatch(Character::isISOControl)) {
                return Optional.of(text);
            }
            fault(key, typed.shown(), accepted + ", at most " + longest + " characters on one line");
            return Optional.empty();
        });
    }

    Optional<String> word(String key, List<String> known) {
        String accepted = "one of " + String.join(", ", known);
        return scalar(key, accepted).flatMap(typed -> {
            String word = typed.text().strip();
            if (known.contains(word)) {
                return Optional.of(word);
            }
            fault(key, typed.shown(), accepted);
            return Optional.empty();
        });
    }

    Optional<Double> number(String key, Entry.Scalar typed, String accepted) {
        String text = typed.text().strip();
        if (NUMBER.matcher(text).matches() && !LEADING_NOUGHT.matcher(text).matches()) {
            return Optional.of(Double.parseDouble(text));
        }
        String unit = NUMBER_WITH_UNIT.matcher(text).matches() ? "; leave the unit away" : "";
        String comma = NUMBER_WITH_COMMA.matcher(text).matches() ? "; write the fraction with a point" : "";
        fault(key, typed.shown(), accepted + unit + comma);
        return Optional.empty();
    }

    /** A number within a range, both ends included. */
    Optional<Double> numberWithin(String key, double lowest, double highest, String accepted) {
        return scalar(key, accepted)
                .flatMap(typed -> number(key, typed, accepted))
                .filter(value -> {
                    boolean within = value >= lowest && value <= highest;
                    if (!within) {
                        fault(key, PlainNumber.text(value), accepted);
                    }
                    return within;
                });
    }
}
