package wallplate.marking;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.Fault;

/** Reads the {@code marking} part of a task file and names every fault in it. */
final class GuidelineReader {

    private static final Pattern TOLERANCE = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*([^\\d].*)?");
    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Set<String> KEYS =
            Set.of("name", "tolerance", "borderline", "groups", "criteria", "consistent-working");
    private static final Set<String> CRITERION_KEYS = Set.of(
            "id", "title", "marks", "measure", "part", "teacher", "tolerance", "part-marks", "group", "needs",
            "consistent-working");

    private final ExpectedDrawing expected;
    private final Map<String, Object> source;
    private final List<Fault> faults = new ArrayList<>();

    GuidelineReader(ExpectedDrawing expected) {
        this.expected = expected;
        this.source = expected.task().marking();
    }

    GuidelineReading read() {
        Entry marking = new Entry("marking", source);
        marking.allowOnly(KEYS);
        String name = marking.text("name").orElse("default");
        Tolerances tolerances = tolerances(marking);
        double borderline = marking.number("borderline", 0, 5).orElse(0.0);
        boolean consistent = marking.yesNo("consistent-working").orElse(true);
        Guideline usual = Guideline.defaultFor(expected, name, tolerances, borderline);
        List<MarkGroup> groups = groups(marking);
        List<Criterion> criteria = source.containsKey("criteria")
                ? criteria(marking, groups, consistent)
                : usual.criteria().stream().map(one -> withConsistentWorking(one, consistent)).toList();
        if (!faults.isEmpty()) {
            return new GuidelineReading.Refused(faults);
        }
        return new GuidelineReading.Accepted(new Guideline(name, tolerances, borderline, groups, criteria));
    }

    private static Criterion withConsistentWorking(Criterion one, boolean consistent) {
        return new Criterion(
                one.id(),
                one.title(),
                one.marks(),
                one.subject(),
                one.tolerance(),
                one.partMarks(),
                one.group(),
                one.precondition(),
                consistent);
    }

    private Tolerances tolerances(Entry marking) {
        Optional<Entry> found = marking.entry("tolerance");
        if (found.isEmpty()) {
            return Tolerances.USUAL;
        }
        Entry tolerance = found.get();
        tolerance.allowOnly(Set.of("length", "thickness", "angle"));
        return new Tolerances(
                tolerance.number("length", 0, 100).orElse(Tolerances.USUAL.lengthMm()),
                tolerance.number("thickness", 0, 100).orElse(Tolerances.USUAL.thicknessMm()),
                tolerance.number("angle", 0, 45).orElse(Tolerances.USUAL.angleDegrees()));
    }

    private List<MarkGroup> groups(Entry marking) {
        List<MarkGroup> groups = new ArrayList<>();
        marking.entry("groups").ifPresent(all -> all.content.forEach((id, content) -> all.entry(id).ifPresent(group -> {
            group.allowOnly(Set.of("title", "maximum"));
            group.marks("maximum").ifPresent(maximum ->
                    groups.add(new MarkGroup(id, group.text("title").orElse(id), maximum)));
        })));
        return groups;
    }

    private List<Criterion> criteria(Entry marking, List<MarkGroup> groups, boolean consistent) {
        if (!(source.get("criteria") instanceof List<?> list) || list.isEmpty()) {
            marking.fault("criteria", source.get("criteria"), "a list of criteria, at least one");
            return List.of();
        }
        List<Criterion> criteria = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (int index = 0; index < list.size(); index++) {
            Optional<Entry> entry = marking.listEntry("criteria", index, list.get(index));
            entry.flatMap(one -> criterion(one, groups, consistent)).ifPresent(criterion -> {
                if (!ids.add(criterion.id())) {
                    entry.orElseThrow().fault("id", criterion.id(), "an id that no other criterion has");
                }
                criteria.add(criterion);
            });
        }
        return criteria;
    }

    private Optional<Criterion> criterion(Entry entry, List<MarkGroup> groups, boolean consistent) {
        int before = faults.size();
        entry.allowOnly(CRITERION_KEYS);
        Optional<Subject> subject = subject(entry);
        Optional<String> id = id(entry, subject);
        double marks = entry.content.containsKey("marks") ? entry.marks("marks").orElse(1.0) : 1.0;
        Optional<Tolerance> tolerance = tolerance(entry, subject);
        List<Band> bands = bands(entry, subject, tolerance, marks);
        Optional<String> group = group(entry, groups);
        Optional<Precondition> needs = precondition(entry);
        boolean carried = entry.yesNo("consistent-working").orElse(consistent);
        if (faults.size() > before || subject.isEmpty() || id.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Criterion(
                id.get(), entry.text("title"), marks, subject.get(), tolerance, bands, group, needs, carried));
    }

    private Optional<String> id(Entry entry, Optional<Subject> subject) {
        Optional<String> stated = entry.text("id");
        Optional<String> id = stated.isPresent()
                ? stated
                : subject.filter(Subject.OneKey.class::isInstance).map(one -> ((Subject.OneKey) one).key().replace('.', '-'));
        if (id.isEmpty() || !ID.matcher(id.get()).matches()) {
            entry.fault("id", id.orElse(null), "lower case words joined by hyphens");
            return Optional.empty();
        }
        return id;
    }

    private Optional<Subject> subject(Entry entry) {
        List<String> stated = java.util.stream.Stream.of("measure", "part", "teacher")
                .filter(entry.content::containsKey)
                .toList();
        if (stated.size() != 1) {
            entry.fault("measure", stated.isEmpty() ? null : String.join(" and ", stated), "exactly one of measure, part, teacher");
            return Optional.empty();
        }
        return switch (stated.get(0)) {
            case "part" -> entry.text("part").flatMap(part -> part(entry, part));
            case "teacher" -> entry.text("teacher").map(Subject.TeachersJudgement::new);
            default -> measured(entry);
        };
    }

    private Optional<Subject> part(Entry entry, String part) {
        boolean known = expected.values().stream().anyMatch(value -> value.key().startsWith(part + "."));
        if (!known) {
            entry.fault("part", part, "a part that the task asks for");
            return Optional.empty();
        }
        return Optional.of(new Subject.PartDrawn(part));
    }

    private Optional<Subject> measured(Entry entry) {
        Object value = entry.content.get("measure");
        if (value instanceof String key) {
            return knownKey(entry, "measure", key).map(Subject.OneKey::new);
        }
        if (!(value instanceof List<?> keys) || keys.size() < 2) {
            entry.fault("measure", value, "a key such as roof.pitch, or a list of at least two keys");
            return Optional.empty();
        }
        List<String> known = keys.stream()
                .map(String::valueOf)
                .flatMap(key -> knownKey(entry, "measure", key).stream())
                .toList();
        return Optional.of(new Subject.SeveralKeys(known));
    }

    private Optional<String> knownKey(Entry entry, String at, String key) {
        if (expected.value(key).isEmpty()) {
            entry.fault(at, key, "one of the keys that the task asks for: "
                    + String.join(", ", expected.values().stream().map(Expected::key).toList()));
            return Optional.empty();
        }
        return Optional.of(key);
    }

    private Optional<Tolerance> tolerance(Entry entry, Optional<Subject> subject) {
        Object stated = entry.content.get("tolerance");
        if (stated == null) {
            return Optional.empty();
        }
        Optional<Expected> asked = oneValue(subject);
        String accepted = "a number with its unit (mm, mm real, %, degrees), for a criterion with one measured length or angle;"
                + " for a count a whole number of things";
        Matcher matcher = TOLERANCE.matcher(String.valueOf(stated));
        if (asked.isEmpty() || !matcher.matches()) {
            entry.fault("tolerance", stated, accepted);
            return Optional.empty();
        }
        Optional<Tolerance> tolerance = unit(matcher.group(2), asked.get())
                .map(unit -> new Tolerance(Double.parseDouble(matcher.group(1)), unit))
                .filter(one -> one.fits(asked.get()));
        if (tolerance.isEmpty()) {
            entry.fault("tolerance", stated, accepted);
        }
        return tolerance;
    }

    private Optional<Expected> oneValue(Optional<Subject> subject) {
        return subject.filter(Subject.OneKey.class::isInstance)
                .flatMap(one -> expected.value(((Subject.OneKey) one).key()));
    }

    private static Optional<Tolerance.Unit> unit(@org.jspecify.annotations.Nullable String word, Expected asked) {
        if (word == null) {
            return Optional.of(Tolerances.USUAL.forValue(asked).unit());
        }
        return switch (word.trim()) {
            case "mm" -> Optional.of(Tolerance.Unit.PAPER_MM);
            case "mm real" -> Optional.of(Tolerance.Unit.REAL_MM);
            case "%", "percent" -> Optional.of(Tolerance.Unit.PERCENT);
            case "degrees", "degree", "deg" -> Optional.of(Tolerance.Unit.DEGREES);
            case "things" -> Optional.of(Tolerance.Unit.THINGS);
            default -> Optional.empty();
        };
    }

    private List<Band> bands(Entry entry, Optional<Subject> subject, Optional<Tolerance> tolerance, double marks) {
        Object stated = entry.content.get("part-marks");
        if (stated == null) {
            return List.of();
        }
        boolean several = subject.filter(Subject.SeveralKeys.class::isInstance).isPresent();
        boolean banded = several || oneValue(subject).filter(GuidelineReader::hasSize).isPresent();
        if (!banded || !(stated instanceof List<?> list)) {
            entry.fault("part-marks", stated, "a list of bands, for a length, an angle, a count or several keys");
            return List.of();
        }
        String limit = several ? "at-least" : "within";
        double narrowest = several ? 0 : tolerance.or(() -> oneValue(subject).map(Tolerances.USUAL::forValue))
                .map(Tolerance::value)
                .orElse(0.0);
        List<Band> bands = new ArrayList<>();
        for (int index = 0; index < list.size(); index++) {
            entry.listEntry("part-marks", index, list.get(index))
                    .flatMap(band -> band(band, limit, narrowest, marks))
                    .ifPresent(bands::add);
        }
        return bands;
    }

    private static boolean hasSize(Expected asked) {
        return !(asked instanceof Expected.YesNo) && !(asked instanceof Expected.Word);
    }

    private Optional<Band> band(Entry band, String limitKey, double narrowest, double full) {
        band.allowOnly(Set.of(limitKey, "marks"));
        Optional<Double> limit = band.number(limitKey, narrowest, 1000);
        Optional<Double> marks = band.marks("marks");
        if (limit.isEmpty() && !band.content.containsKey(limitKey)) {
            band.fault(limitKey, null, "a number");
        }
        if (marks.isPresent() && marks.get() >= full) {
            band.fault("marks", marks.get(), "fewer than the full " + full);
            return Optional.empty();
        }
        return limit.flatMap(at -> marks.map(given -> new Band(at, given)));
    }

    private Optional<String> group(Entry entry, List<MarkGroup> groups) {
        Optional<String> group = entry.text("group");
        if (group.isPresent() && groups.stream().noneMatch(known -> known.id().equals(group.get()))) {
            entry.fault("group", group.get(), "a group that is named under groups");
        }
        return group;
    }

    private Optional<Precondition> precondition(Entry entry) {
        return entry.entry("needs").flatMap(needs -> {
            needs.allowOnly(Set.of("key", "at-least"));
            Optional<String> key = needs.text("key").filter(one -> expected.value(one).filter(Expected.Count.class::isInstance).isPresent());
            if (key.isEmpty()) {
                needs.fault("key", needs.content.get("key"), "a count that the task asks for, such as support.count");
            }
            int atLeast = needs.number("at-least", 1, 100).orElse(1.0).intValue();
            return key.map(count -> new Precondition(count, atLeast));
        });
    }

    /** A part of the file with the place where it stands. */
    private final class Entry {

        private final String place;
        private final Map<String, Object> content;

        private Entry(String place, Map<String, Object> content) {
            this.place = place;
            this.content = content;
        }

        private void fault(String key, @org.jspecify.annotations.Nullable Object found, String accepted) {
            faults.add(new Fault(place + "." + key, found == null ? "" : String.valueOf(found), accepted));
        }

        private void allowOnly(Set<String> known) {
            content.keySet().stream()
                    .filter(key -> !known.contains(key))
                    .sorted()
                    .forEach(key -> fault(
                            key,
                            content.get(key),
                            "no such key; known are " + String.join(", ", new java.util.TreeSet<>(known))));
        }

        private Optional<Entry> entry(String key) {
            Object value = content.get(key);
            if (value == null) {
                return Optional.empty();
            }
            return asEntry(place + "." + key, key, value);
        }

        private Optional<Entry> listEntry(String key, int index, @org.jspecify.annotations.Nullable Object value) {
            return asEntry("%s.%s[%d]".formatted(place, key, index + 1), key, value);
        }

        private Optional<Entry> asEntry(String at, String key, @org.jspecify.annotations.Nullable Object value) {
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
            return Optional.of(new Entry(at, entries));
        }

        private Optional<String> text(String key) {
            Object value = content.get(key);
            if (value == null) {
                return Optional.empty();
            }
            if (value instanceof Map || value instanceof List || String.valueOf(value).isBlank()) {
                fault(key, value, "a text");
                return Optional.empty();
            }
            return Optional.of(String.valueOf(value));
        }

        private Optional<Double> number(String key, double least, double most) {
            Object value = content.get(key);
            if (value == null) {
                return Optional.empty();
            }
            if (!(value instanceof Number number) || number.doubleValue() < least || number.doubleValue() > most) {
                fault(key, value, "a number from %s to %s".formatted(plain(least), plain(most)));
                return Optional.empty();
            }
            return Optional.of(number.doubleValue());
        }

        private Optional<Double> marks(String key) {
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

        private Optional<Boolean> yesNo(String key) {
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
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? String.valueOf((long) number) : String.valueOf(number);
    }
}
