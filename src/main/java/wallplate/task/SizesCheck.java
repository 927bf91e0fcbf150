package wallplate.task;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wallplate.task.yaml.Entry;

/**
 * Checks the sizes and choices of one detail: unknown and missing keys, each value, and what must hold between
 * them.
 */
final class SizesCheck {

    private final EntryReader reader;
    private final DetailSchema detail;
    private final List<String> commonKeys;

    /**
     * @param commonKeys the keys of the top level that every detail has
     */
    SizesCheck(EntryReader reader, DetailSchema detail, List<String> commonKeys) {
        this.reader = reader;
        this.detail = detail;
        this.commonKeys = List.copyOf(commonKeys);
    }

    /** The sizes that are as they should be; every other one has left a fault. */
    Sizes sizes() {
        refuseUnknownKeys("", reader.top());
        Map<String, Object> sound = new LinkedHashMap<>();
        for (PartSchema part : detail.parts()) {
            if (!part.optional() || reader.at(part.name()).isPresent()) {
                part.keys().forEach(key -> size(key).ifPresent(value -> sound.put(key.key(), value)));
            }
        }
        Sizes sizes = Sizes.of(sound);
        detail.brokenRules(sizes)
                .forEach(rule -> reader.fault(
                        rule.key(),
                        PlainNumber.text(sizes.number(rule.key())),
                        rule.accepted().apply(sizes)));
        return sizes;
    }

    private void refuseUnknownKeys(String prefix, Entry.Group group) {
        Set<String> known = knownAt(prefix);
        group.entries().forEach((key, entry) -> {
            String path = prefix + key;
            if (!known.contains(key)) {
                reader.unknownKey(path, key, known);
                return;
            }
            boolean common = prefix.isEmpty() && commonKeys.contains(key);
            Set<String> below = common ? Set.of() : knownAt(path + ".");
            if (!below.isEmpty()) {
                refuseBelow(path, entry, below);
            }
        });
    }

    private void refuseBelow(String path, Entry entry, Set<String> known) {
        if (entry instanceof Entry.Group group) {
            refuseUnknownKeys(path + ".", group);
        } else {
            reader.fault(path, entry.shown(), "a group of the keys " + String.join(", ", known));
        }
    }

    private Set<String> knownAt(String prefix) {
        Set<String> known = new LinkedHashSet<>(prefix.isEmpty() ? commonKeys : List.of());
        detail.keys()
                .map(SizeKey::key)
                .filter(key -> key.startsWith(prefix))
                .map(key -> key.substring(prefix.length()).split("\\.")[0])
                .forEach(known::add);
        return known;
    }

    private Optional<?> size(SizeKey key) {
        if (reader.isBelowSingleValue(key.key())) {
            return Optional.empty();
        }
        if (key instanceof SizeKey.Quantity quantity) {
            return quantity(quantity);
        }
        if (key instanceof SizeKey.Choice choice) {
            return reader.word(
                    choice.key(),
                    choice.options().stream().map(SizeKey.Choice.Option::word).toList());
        }
        return reader.line(key.key(), SizeKey.Name.LONGEST, key.accepted());
    }

    private Optional<Double> quantity(SizeKey.Quantity quantity) {
        return reader.scalar(quantity.key(), quantity.accepted())
                .flatMap(typed -> reader.number(quantity.key(), typed, quantity.accepted()))
                .filter(value -> isAllowed(quantity, value));
    }

    private boolean isAllowed(SizeKey.Quantity quantity, double value) {
        if (quantity.allows(value)) {
            return true;
        }
        boolean metres = quantity.unit() == SizeKey.Unit.MILLIMETRES
                && value < quantity.lowest()
                && quantity.allows(value * 1000);
        reader.fault(
                quantity.key(),
                PlainNumber.text(value),
                quantity.accepted() + (metres ? "; this looks like metres" : ""));
        return false;
    }
}
