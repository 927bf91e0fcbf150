package wallplate.marking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.Fault;
import wallplate.task.PlainNumber;

/** Reads one criterion of a guideline's file. */
final class CriterionReader {

    private static final Pattern TOLERANCE = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*([^\\d].*)?");
    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Set<String> KEYS = Set.of(
            "id",
            "title",
            "marks",
            "measure",
            "part",
            "lines",
            "accepted",
            "teacher",
            "tolerance",
            "part-marks",
            "group",
            "needs",
            "consistent-working");

    private final ExpectedDrawing expected;
    private final Tolerances tolerances;
    private final List<MarkGroup> groups;
    private final boolean consistentWorking;
    private final List<Fault> faults;

    /**
     * @param faults where what is wrong is added
     * @param consistentWorking what holds for criteria that do not say
     */
    CriterionReader(
            ExpectedDrawing expected,
            Tolerances tolerances,
            List<MarkGroup> groups,
            boolean consistentWorking,
            List<Fault> faults) {
        this.expected = expected;
        this.tolerances = tolerances;
        this.groups = List.copyOf(groups);
        this.consistentWorking = consistentWorking;
        this.faults = faults;
    }

    /** The criterion; empty where it has a fault. */
    Optional<Criterion> read(GuidelineEntry entry) {
        int before = faults.size();
        entry.allowOnly(KEYS);
        Optional<Subject> subject = subject(entry);
        Optional<String> id = id(entry, subject);
        double marks = entry.has("marks") ? entry.marks("marks").orElse(1.0) : 1.0;
        Optional<Tolerance> tolerance = tolerance(entry, subject);
        List<Band> bands = bands(entry, subject, tolerance, marks);
        Optional<String> group = group(entry);
        Optional<Precondition> needs = precondition(entry);
        boolean carried = entry.yesNo("consistent-working").orElse(consistentWorking);
        if (faults.size() > before || subject.isEmpty() || id.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Criterion(
                id.get(), entry.text("title"), marks, subject.get(), tolerance, bands, group, needs, carried));
    }

    private Optional<String> id(GuidelineEntry entry, Optional<Subject> subject) {
        Optional<String> stated = entry.text("id");
        Optional<String> id = stated.isPresent()
                ? stated
                : subject.filter(Subject.OneKey.class::isInstance)
                        .map(one -> ((Subject.OneKey) one).key().replace('.', '-'));
        if (stated.isEmpty() && subject.isEmpty()) {
            return Optional.empty();
        }
        if (id.isEmpty() || !ID.matcher(id.get()).matches()) {
            entry.fault("id", id.orElse(null), "lower case words joined by hyphens");
            return Optional.empty();
        }
        return id;
    }

    private Optional<Subject> subject(GuidelineEntry entry) {
        List<String> stated =
                Stream.of("measure", "part", "lines", "teacher").filter(entry::has).toList();
        if (stated.size() != 1) {
            entry.fault(
                    "measure",
                    stated.isEmpty() ? null : String.join(" and ", stated),
                    "exactly one of measure, part, lines, teacher");
            return Optional.empty();
        }
        if (entry.has("accepted") && !entry.has("lines")) {
            entry.fault("accepted", entry.value("accepted"), "nothing, for a criterion that asks for no lines");
        }
        return switch (stated.get(0)) {
            case "part" -> entry.text("part").flatMap(part -> part(entry, part));
            case "lines" -> entry.text("lines").flatMap(word -> lines(entry, word));
            case "teacher" -> entry.text("teacher").map(Subject.TeachersJudgement::new);
            default -> measured(entry);
        };
    }

    private Optional<Subject> part(GuidelineEntry entry, String part) {
        boolean known = expected.values().stream().anyMatch(value -> value.key().startsWith(part + "."));
        if (!known) {
            entry.fault("part", part, "a part that the task asks for");
            return Optional.empty();
        }
        return Optional.of(new Subject.PartDrawn(part));
    }

    private Optional<Subject> lines(GuidelineEntry entry, String word) {
        Optional<LineAspect> known = LineAspect.of(word);
        if (known.isEmpty()) {
            entry.fault(
                    "lines",
                    word,
                    "one of "
                            + Arrays.stream(LineAspect.values())
                                    .map(LineAspect::word)
                                    .collect(Collectors.joining(", ")));
        }
        return known.map(aspect -> new Subject.Lines(aspect, accepted(entry, aspect)));
    }

    /** A limit that is not stated is open; where none is, the usual ones hold. */
    private static LineRange accepted(GuidelineEntry entry, LineAspect aspect) {
        Optional<GuidelineEntry> stated = entry.entry("accepted");
        if (stated.isEmpty()) {
            return aspect.usual();
        }
        GuidelineEntry limits = stated.get();
        limits.allowOnly(Set.of("from", "to"));
        if (!limits.has("from") && !limits.has("to")) {
            limits.fault("to", null, "a number");
        }
        double from = limits.number("from", 0, aspect.most()).orElse(0.0);
        double to = limits.number("to", 0, aspect.most()).orElse(aspect.most());
        if (from > to) {
            limits.fault("from", from, "no more than " + PlainNumber.text(to));
        }
        return new LineRange(Math.min(from, to), to);
    }

    private Optional<Subject> measured(GuidelineEntry entry) {
        Object value = entry.value("measure");
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

    private Optional<String> knownKey(GuidelineEntry entry, String at, String key) {
        if (expected.value(key).isEmpty()) {
            entry.fault(
                    at,
                    key,
                    "one of the keys that the task asks for: "
                            + String.join(
                                    ", ",
                                    expected.values().stream()
                                            .map(Expected::key)
                                            .toList()));
            return Optional.empty();
        }
        return Optional.of(key);
    }

    private Optional<Tolerance> tolerance(GuidelineEntry entry, Optional<Subject> subject) {
        Object stated = entry.value("tolerance");
        if (stated == null) {
            return Optional.empty();
        }
        Optional<Expected> asked = oneValue(subject);
        String accepted =
                "a number with its unit (mm, mm real, %, degrees), for a criterion with one measured length or angle;"
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

    private Optional<Tolerance.Unit> unit(@Nullable String word, Expected asked) {
        if (word == null) {
            return Optional.of(tolerances.forValue(asked).unit());
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

    private List<Band> bands(
            GuidelineEntry entry, Optional<Subject> subject, Optional<Tolerance> tolerance, double marks) {
        Object stated = entry.value("part-marks");
        if (stated == null) {
            return List.of();
        }
        boolean several = subject.filter(Subject.SeveralKeys.class::isInstance).isPresent();
        boolean lines = subject.filter(Subject.Lines.class::isInstance).isPresent();
        boolean banded = several
                || lines
                || oneValue(subject).filter(CriterionReader::hasSize).isPresent();
        if (!banded || !(stated instanceof List<?> list)) {
            entry.fault("part-marks", stated, "a list of bands, for a length, an angle, a count, several keys or lines");
            return List.of();
        }
        String limit = several ? "at-least" : "within";
        double narrowest = several
                ? 0
                : tolerance
                        .or(() -> oneValue(subject).map(tolerances::forValue))
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

    private Optional<Band> band(GuidelineEntry band, String limitKey, double narrowest, double full) {
        band.allowOnly(Set.of(limitKey, "marks"));
        Optional<Double> limit = band.number(limitKey, narrowest, 1000);
        Optional<Double> marks = band.marks("marks");
        if (limit.isEmpty() && !band.has(limitKey)) {
            band.fault(limitKey, null, "a number");
        }
        if (marks.isPresent() && marks.get() >= full) {
            band.fault("marks", marks.get(), "fewer than the full " + full);
            return Optional.empty();
        }
        return limit.flatMap(at -> marks.map(given -> new Band(at, given)));
    }

    private Optional<String> group(GuidelineEntry entry) {
        Optional<String> group = entry.text("group");
        if (group.isPresent() && groups.stream().noneMatch(known -> known.id().equals(group.get()))) {
            entry.fault("group", group.get(), "a group that is named under groups");
        }
        return group;
    }

    private Optional<Precondition> precondition(GuidelineEntry entry) {
        return entry.entry("needs").flatMap(needs -> {
            needs.allowOnly(Set.of("key", "at-least"));
            Optional<String> key = needs.text("key").filter(one -> expected.value(one)
                    .filter(Expected.Count.class::isInstance)
                    .isPresent());
            if (key.isEmpty()) {
                needs.fault("key", needs.value("key"), "a count that the task asks for, such as support.count");
            }
            int atLeast = needs.number("at-least", 1, 100).orElse(1.0).intValue();
            return key.map(count -> new Precondition(count, atLeast));
        });
    }
}
