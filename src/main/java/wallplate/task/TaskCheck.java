package wallplate.task;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import wallplate.task.yaml.Entry;

/** Checks one task as it stands in a file or a form and collects every fault on the way. */
final class TaskCheck {

    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d{1,12}(\\.\\d{0,12})?|\\.\\d{1,12})");
    private static final Pattern NUMBER_WITH_UNIT = Pattern.compile("[-+]?\\d[\\d.,]*\\s*(mm|cm|m|deg|degrees|°|in|ft|')");
    private static final Pattern SCALE = Pattern.compile("1\\s*:\\s*(\\d{1,6}(\\.\\d{1,6})?)");
    private static final int LONGEST_ID = 60;
    private static final int LONGEST_TITLE = 120;
    private static final double LARGEST_DENOMINATOR = 1000;
    private static final Set<String> COMMON_KEYS =
            new LinkedHashSet<>(List.of("id", "title", "detail", "scale", "eaves", "sheet", "marking"));
    private static final List<String> SHEET_KEYS = List.of("size", "orientation", "reference-bar");
    private static final double USUAL_BAR_MM = 100;

    private final Entry.Group top;
    private final List<Fault> faults;
    private final @Nullable Map<String, Object> keptMarking;

    TaskCheck(Entry.Group top, List<Fault> faultsSoFar) {
        this.top = top;
        this.faults = new ArrayList<>(faultsSoFar);
        this.keptMarking = null;
    }

    TaskCheck(Entry.Group top, Map<String, Object> marking) {
        this.top = top;
        this.faults = new ArrayList<>();
        this.keptMarking = marking;
    }

    TaskReading result() {
        Optional<String> id = text("id", LONGEST_ID, "lower case words of letters and digits joined by hyphens");
        id.filter(found -> !ID.matcher(found).matches())
                .ifPresent(found -> fault(
                        "id", found, "lower case words of letters and digits joined by hyphens, such as boathouse-eaves"));
        Optional<String> title = text("title", LONGEST_TITLE, "what stands over the drawing, 1 to 120 characters");
        Optional<DetailSchema> detail = detail();
        Optional<Scale> scale = scale();
        Optional<EavesSide> eaves = eaves();
        Sizes sizes = detail.map(this::sizes).orElseGet(() -> Sizes.of(Map.of()));
        Optional<SheetFormat> sheet = sheet();
        Map<String, Object> marking = keptMarking != null ? keptMarking : marking();
        if (!faults.isEmpty()) {
            return new TaskReading.Refused(faults);
        }
        return new TaskReading.Accepted(new DrawingTask(
                id.orElseThrow(),
                title.orElseThrow(),
                detail.orElseThrow().id(),
                scale.orElseThrow(),
                eaves.orElseThrow(),
                sizes,
                sheet.orElseThrow(),
                marking));
    }

    private Optional<DetailSchema> detail() {
        List<String> known = Details.all().stream().map(DetailSchema::id).toList();
        Optional<String> word = word("detail", top.get("detail"), known);
        return word.flatMap(Details::find);
    }

    private Optional<Scale> scale() {
        String accepted = "a reduction in quotes, such as \"1:20\", from 1:1 to 1:1000";
        Optional<Entry.Scalar> found = scalar("scale", top.get("scale"), accepted);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        Entry.Scalar typed = found.get();
        Matcher matcher = SCALE.matcher(typed.text().strip());
        if (!matcher.matches()) {
            fault("scale", typed.shown(), accepted);
            return Optional.empty();
        }
        if (!typed.quoted()) {
            fault(
                    "scale",
                    typed.shown() + " without quotes, which YAML 1.1 reads as the number " + sexagesimal(matcher.group(1)),
                    "the same in quotes: \"" + typed.shown() + "\"");
            return Optional.empty();
        }
        double denominator = Double.parseDouble(matcher.group(1));
        if (denominator < 1 || denominator > LARGEST_DENOMINATOR) {
            fault("scale", typed.shown(), accepted);
            return Optional.empty();
        }
        return Optional.of(new Scale(denominator));
    }

    /** YAML 1.1 takes numbers joined by colons as base sixty: 1:20 is 1 x 60 + 20. */
    private static String sexagesimal(String denominator) {
        return PlainNumber.text(60 + Double.parseDouble(denominator));
    }

    private Optional<EavesSide> eaves() {
        return word("eaves", top.get("eaves"), List.of("left", "right"))
                .map(word -> EavesSide.valueOf(word.toUpperCase(Locale.ROOT)));
    }

    private Sizes sizes(DetailSchema detail) {
        refuseUnknownKeys("", top, knownAt("", detail), detail);
        Map<String, Object> sound = new LinkedHashMap<>();
        for (PartSchema part : detail.parts()) {
            if (part.optional() && top.get(part.name()).isEmpty()) {
                continue;
            }
            part.keys().forEach(key -> size(key).ifPresent(value -> sound.put(key.key(), value)));
        }
        Sizes sizes = Sizes.of(sound);
        detail.brokenRules(sizes)
                .forEach(rule -> fault(
                        rule.key(), PlainNumber.text(sizes.number(rule.key())), rule.accepted().apply(sizes)));
        return sizes;
    }

    private void refuseUnknownKeys(String prefix, Entry.Group group, Set<String> known, DetailSchema detail) {
        group.entries().forEach((key, entry) -> {
            String path = prefix + key;
            if (!known.contains(key)) {
                fault(path, "a key that is not known here", "only " + String.join(", ", known));
                return;
            }
            boolean common = prefix.isEmpty() && COMMON_KEYS.contains(key);
            Set<String> below = common ? Set.of() : knownAt(path + ".", detail);
            if (below.isEmpty()) {
                return;
            }
            if (entry instanceof Entry.Group inner) {
                refuseUnknownKeys(path + ".", inner, below, detail);
            } else {
                fault(path, entry.shown(), "a group of the keys " + String.join(", ", below));
            }
        });
    }

    /** The keys that may stand at a place of the file. */
    private static Set<String> knownAt(String prefix, DetailSchema detail) {
        Set<String> known = new LinkedHashSet<>(prefix.isEmpty() ? COMMON_KEYS : Set.of());
        detail.keys()
                .map(SizeKey::key)
                .filter(key -> key.startsWith(prefix))
                .map(key -> key.substring(prefix.length()).split("\\.")[0])
                .forEach(known::add);
        return known;
    }

    private Optional<Object> size(SizeKey key) {
        Optional<Entry> found = at(key.key());
        if (found.isEmpty() && isBelowSomethingElse(key.key())) {
            return Optional.empty();
        }
        Optional<Entry.Scalar> typed = scalar(key.key(), found, key.accepted());
        return typed.flatMap(scalar -> valueOf(key, scalar));
    }

    private Optional<Object> valueOf(SizeKey key, Entry.Scalar typed) {
        if (key instanceof SizeKey.Quantity quantity) {
            return number(key.key(), typed, quantity.accepted())
                    .filter(value -> allowed(quantity, value, typed))
                    .map(Object.class::cast);
        }
        if (key instanceof SizeKey.Choice choice) {
            return word(choice.key(), Optional.of(typed), choice.options().stream().map(SizeKey.Choice.Option::word).toList())
                    .map(Object.class::cast);
        }
        return name(key, typed).map(Object.class::cast);
    }

    private boolean allowed(SizeKey.Quantity quantity, double value, Entry.Scalar typed) {
        if (quantity.allows(value)) {
            return true;
        }
        boolean metres = quantity.unit() == SizeKey.Unit.MILLIMETRES && value > 0 && quantity.allows(value * 1000);
        fault(quantity.key(), typed.shown(), quantity.accepted() + (metres ? "; this looks like metres" : ""));
        return false;
    }

    private Optional<String> name(SizeKey key, Entry.Scalar typed) {
        String name = typed.text().strip();
        if (name.length() > SizeKey.Name.LONGEST || name.chars().anyMatch(Character::isISOControl)) {
            fault(key.key(), typed.shown(), key.accepted());
            return Optional.empty();
        }
        return Optional.of(name);
    }

    private Optional<Double> number(String key, Entry.Scalar typed, String accepted) {
        String text = typed.text().strip();
        if (NUMBER.matcher(text).matches() && !looksOctal(typed)) {
            return Optional.of(Double.parseDouble(text));
        }
        String why = NUMBER_WITH_UNIT.matcher(text).matches() ? "; leave the unit away" : "";
        String comma = text.matches("[-+]?\\d+,\\d+") ? "; write the fraction with a point" : "";
        fault(key, typed.shown(), accepted + why + comma);
        return Optional.empty();
    }

    /** YAML 1.1 reads a whole number with a leading nought in base eight, a person does not: neither is guessed. */
    private static boolean looksOctal(Entry.Scalar typed) {
        return typed.text().strip().matches("[-+]?0\\d+(\\..*)?");
    }

    private Optional<SheetFormat> sheet() {
        Optional<Entry> found = top.get("sheet");
        if (found.isPresent() && !(found.get() instanceof Entry.Group)) {
            fault("sheet", found.get().shown(), "a group of the keys " + String.join(", ", SHEET_KEYS));
            return Optional.empty();
        }
        found.map(Entry.Group.class::cast).ifPresent(group -> group.entries().keySet().stream()
                .filter(key -> !SHEET_KEYS.contains(key))
                .forEach(key -> fault(
                        "sheet." + key, "a key that is not known here", "only " + String.join(", ", SHEET_KEYS))));
        Optional<String> size = word("sheet.size", at("sheet.size"), PaperSize.names());
        Optional<String> orientation =
                word("sheet.orientation", at("sheet.orientation"), List.of("landscape", "portrait"));
        if (size.isEmpty() || orientation.isEmpty()) {
            referenceBar(PaperSize.A0.longSideMm());
            return Optional.empty();
        }
        PaperSize paper = PaperSize.valueOf(size.get());
        boolean landscape = orientation.get().equals("landscape");
        double width = landscape ? paper.longSideMm() : paper.shortSideMm();
        double height = landscape ? paper.shortSideMm() : paper.longSideMm();
        return referenceBar(width).map(bar -> new SheetFormat(paper.name(), width, height, bar));
    }

    private Optional<Double> referenceBar(double sheetWidthMm) {
        String key = "sheet.reference-bar";
        if (at(key).isEmpty()) {
            return Optional.of(USUAL_BAR_MM);
        }
        double longest = sheetWidthMm - 40;
        String accepted = "a length in millimetres on paper from 20 to " + PlainNumber.text(longest);
        return scalar(key, at(key), accepted)
                .flatMap(typed -> number(key, typed, accepted))
                .filter(value -> {
                    boolean fits = value >= 20 && value <= longest;
                    if (!fits) {
                        fault(key, PlainNumber.text(value), accepted);
                    }
                    return fits;
                });
    }

    private Map<String, Object> marking() {
        Optional<Entry> found = top.get("marking");
        if (found.isEmpty() || isNothing(found.get())) {
            return Map.of();
        }
        if (!(found.get() instanceof Entry.Group group)) {
            fault("marking", found.get().shown(), "a group of keys, such as tolerance; or leave it out");
            return Map.of();
        }
        checkTolerances(group);
        return plainGroup("marking", group);
    }

    private void checkTolerances(Entry.Group marking) {
        Optional<Entry> found = marking.get("tolerance");
        if (found.isEmpty()) {
            return;
        }
        List<String> known = List.of("length", "thickness", "angle");
        if (!(found.get() instanceof Entry.Group tolerances)) {
            fault("marking.tolerance", found.get().shown(), "a group of the keys " + String.join(", ", known));
            return;
        }
        tolerances.entries().forEach((key, entry) -> {
            String path = "marking.tolerance." + key;
            if (!known.contains(key)) {
                fault(path, "a key that is not known here", "only " + String.join(", ", known));
                return;
            }
            String accepted = "a number more than 0 and at most 50: millimetres on paper, degrees for the angle";
            scalar(path, Optional.of(entry), accepted)
                    .flatMap(typed -> number(path, typed, accepted))
                    .filter(value -> value <= 0 || value > 50)
                    .ifPresent(value -> fault(path, PlainNumber.text(value), accepted));
        });
    }

    private Map<String, Object> plainGroup(String path, Entry.Group group) {
        Map<String, Object> plain = new LinkedHashMap<>();
        group.entries().forEach((key, entry) ->
                plain(path + "." + key, entry).ifPresent(value -> plain.put(key, value)));
        return plain;
    }

    private Optional<Object> plain(String path, Entry entry) {
        if (entry instanceof Entry.Group group) {
            return Optional.of(plainGroup(path, group));
        }
        if (entry instanceof Entry.Row row) {
            List<Object> values = new ArrayList<>();
            for (Entry element : row.entries()) {
                plain(path + "[" + (values.size() + 1) + "]", element).ifPresent(values::add);
            }
            return Optional.of(values);
        }
        return plainScalar(path, (Entry.Scalar) entry);
    }

    private Optional<Object> plainScalar(String path, Entry.Scalar typed) {
        String text = typed.text();
        if (typed.kind() == Entry.Kind.NOTHING) {
            fault(path, "", "a value, or no such key");
            return Optional.empty();
        }
        if (typed.quoted()) {
            return Optional.of(text);
        }
        return switch (typed.kind()) {
            case WHOLE_NUMBER, FRACTION -> number(path, typed, "a plain number, or text in quotes").map(this::typedNumber);
            case YES_OR_NO -> Optional.of(List.of("true", "yes", "on").contains(text.toLowerCase(Locale.ROOT)));
            case TEXT, NOTHING -> Optional.of(text);
        };
    }

    private Object typedNumber(double value) {
        boolean whole = value == Math.rint(value) && Math.abs(value) <= Integer.MAX_VALUE;
        return whole ? (Object) (int) value : (Object) value;
    }

    private Optional<String> text(String key, int longest, String accepted) {
        Optional<Entry.Scalar> typed = scalar(key, top.get(key), accepted);
        if (typed.isEmpty()) {
            return Optional.empty();
        }
        String text = typed.get().text().strip();
        if (text.length() > longest || text.chars().anyMatch(Character::isISOControl)) {
            fault(key, typed.get().shown(), accepted + ", at most " + longest + " characters on one line");
            return Optional.empty();
        }
        return Optional.of(text);
    }

    private Optional<String> word(String key, Optional<? extends Entry> found, List<String> known) {
        String accepted = "one of " + String.join(", ", known);
        Optional<Entry.Scalar> typed = scalar(key, found, accepted);
        if (typed.isPresent() && !known.contains(typed.get().text().strip())) {
            fault(key, typed.get().shown(), accepted);
            return Optional.empty();
        }
        return typed.map(scalar -> scalar.text().strip());
    }

    private Optional<Entry.Scalar> scalar(String key, Optional<? extends Entry> found, String accepted) {
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

    private static boolean isNothing(Entry entry) {
        return entry instanceof Entry.Scalar scalar
                && (scalar.kind() == Entry.Kind.NOTHING || scalar.text().isBlank());
    }

    private Optional<Entry> at(String dottedKey) {
        Optional<Entry> place = Optional.of(top);
        for (String key : dottedKey.split("\\.")) {
            place = place.flatMap(entry -> entry instanceof Entry.Group group ? group.get(key) : Optional.empty());
        }
        return place;
    }

    /** Whether a group above the key holds a single value: that is reported once, not for each key below it. */
    private boolean isBelowSomethingElse(String dottedKey) {
        for (int dot = dottedKey.indexOf('.'); dot >= 0; dot = dottedKey.indexOf('.', dot + 1)) {
            Optional<Entry> above = at(dottedKey.substring(0, dot));
            if (above.isPresent() && !(above.get() instanceof Entry.Group)) {
                return true;
            }
        }
        return false;
    }

    private void fault(String key, String found, String accepted) {
        faults.add(new Fault(key, found, accepted));
    }
}
