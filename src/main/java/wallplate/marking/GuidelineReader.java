package wallplate.marking;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.Fault;

/** Reads the {@code marking} part of a task file and names every fault in it. */
final class GuidelineReader {

    private static final Set<String> KEYS =
            Set.of("name", "tolerance", "borderline", "groups", "criteria", "consistent-working");

    private final ExpectedDrawing expected;
    private final Map<String, Object> source;
    private final List<Fault> faults = new ArrayList<>();

    GuidelineReader(ExpectedDrawing expected, Map<String, Object> source) {
        this.expected = expected;
        this.source = source;
    }

    GuidelineReading read() {
        GuidelineEntry marking = new GuidelineEntry("marking", source, faults);
        marking.allowOnly(KEYS);
        String name = marking.text("name").orElse("default");
        Tolerances tolerances = tolerances(marking);
        double borderline = marking.number("borderline", 0, 5).orElse(0.0);
        boolean consistent = marking.yesNo("consistent-working").orElse(true);
        Guideline usual = Guideline.defaultFor(expected, name, tolerances, borderline);
        List<MarkGroup> groups = groups(marking);
        List<Criterion> criteria = source.containsKey("criteria")
                ? criteria(marking, new CriterionReader(expected, tolerances, groups, consistent, faults))
                : usual.criteria().stream()
                        .map(one -> one.withConsistentWorking(consistent))
                        .toList();
        if (!faults.isEmpty()) {
            return new GuidelineReading.Refused(faults);
        }
        return new GuidelineReading.Accepted(new Guideline(name, tolerances, borderline, groups, criteria));
    }

    private Tolerances tolerances(GuidelineEntry marking) {
        Optional<GuidelineEntry> found = marking.entry("tolerance");
        if (found.isEmpty()) {
            return Tolerances.USUAL;
        }
        GuidelineEntry tolerance = found.get();
        tolerance.allowOnly(Set.of("length", "thickness", "angle"));
        return new Tolerances(
                tolerance.number("length", 0, 100).orElse(Tolerances.USUAL.lengthMm()),
                tolerance.number("thickness", 0, 100).orElse(Tolerances.USUAL.thicknessMm()),
                tolerance.number("angle", 0, 45).orElse(Tolerances.USUAL.angleDegrees()));
    }

    private List<MarkGroup> groups(GuidelineEntry marking) {
        List<MarkGroup> groups = new ArrayList<>();
        marking.entry("groups")
                .ifPresent(all -> all.keys().forEach(id -> all.entry(id).ifPresent(group -> {
                    group.allowOnly(Set.of("title", "maximum"));
                    // A group with a fault still is one, so that its criteria are not called faulty as well.
                    double maximum = group.marks("maximum").orElse(0.0);
                    groups.add(new MarkGroup(id, group.text("title").orElse(id), maximum));
                })));
        return groups;
    }

    private List<Criterion> criteria(GuidelineEntry marking, CriterionReader reader) {
        if (!(source.get("criteria") instanceof List<?> list) || list.isEmpty()) {
            marking.fault("criteria", source.get("criteria"), "a list of criteria, at least one");
            return List.of();
        }
        List<Criterion> criteria = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (int index = 0; index < list.size(); index++) {
            Optional<GuidelineEntry> entry = marking.listEntry("criteria", index, list.get(index));
            entry.flatMap(reader::read).ifPresent(criterion -> {
                if (!ids.add(criterion.id())) {
                    entry.orElseThrow().fault("id", criterion.id(), "an id that no other criterion has");
                }
                criteria.add(criterion);
            });
        }
        return criteria;
    }
}
