package wallplate.web.guideline;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wallplate.marking.Guideline;
import wallplate.task.Fault;
import wallplate.task.PlainNumber;

/**
 * A marking guideline as it is being filled in.
 *
 * @param fields what holds for all of it: its name, the usual tolerances, the borderline
 */
record GuidelineForm(Map<String, String> fields, List<GroupRow> groups, List<CriterionRow> criteria) {

    private static final List<String> COMMON =
            List.of("name", "tolerance.length", "tolerance.thickness", "tolerance.angle", "borderline");
    private static final Pattern CRITERION = Pattern.compile("marking\\.criteria\\[(\\d+)]\\.([a-z-]+).*");
    private static final Pattern GROUP = Pattern.compile("marking\\.groups\\.(.*)\\.([a-z-]+)");

    /** A class has a few hundred criteria at the very most; a form with more was not typed by a person. */
    private static final int MOST_ROWS = 300;

    GuidelineForm {
        fields = Map.copyOf(fields);
        groups = List.copyOf(groups);
        criteria = List.copyOf(criteria);
    }

    static GuidelineForm of(Guideline guideline) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("name", guideline.name());
        fields.put("tolerance.length", PlainNumber.text(guideline.tolerances().lengthMm()));
        fields.put("tolerance.thickness", PlainNumber.text(guideline.tolerances().thicknessMm()));
        fields.put("tolerance.angle", PlainNumber.text(guideline.tolerances().angleDegrees()));
        fields.put("borderline", PlainNumber.text(guideline.borderlineDeviations()));
        List<GroupRow> groups = new ArrayList<>();
        guideline.groups().forEach(group -> groups.add(GroupRow.of(groups.size() + 1, group)));
        List<CriterionRow> criteria = new ArrayList<>();
        guideline.criteria().forEach(criterion -> criteria.add(CriterionRow.of(criteria.size() + 1, criterion)));
        return new GuidelineForm(fields, groups, criteria);
    }

    /** What a person typed; empty rows and those that are to go are left out. */
    static GuidelineForm typed(Map<String, String> typed) {
        Map<String, String> fields = new LinkedHashMap<>();
        COMMON.forEach(key -> fields.put(key, typed.getOrDefault(key, "").strip()));
        List<GroupRow> groups = new ArrayList<>();
        List<CriterionRow> criteria = new ArrayList<>();
        for (int row = 1; row <= MOST_ROWS; row++) {
            GroupRow group = GroupRow.typed(groups.size() + 1, typed, row);
            if (!group.isEmpty()) {
                groups.add(group);
            }
            CriterionRow criterion = CriterionRow.typed(criteria.size() + 1, typed, row);
            boolean goes = typed.containsKey("criteria[%d].remove".formatted(row));
            if (!criterion.isEmpty() && !goes) {
                criteria.add(criterion);
            }
        }
        return new GuidelineForm(fields, groups, criteria);
    }

    /** The same with one more empty criterion. */
    GuidelineForm withAnotherCriterion() {
        List<CriterionRow> more = new ArrayList<>(criteria);
        more.add(CriterionRow.empty(more.size() + 1));
        return new GuidelineForm(fields, groups, more);
    }

    /** The groups with two empty rows to fill in. */
    public List<GroupRow> groupRows() {
        List<GroupRow> rows = new ArrayList<>(groups);
        rows.add(GroupRow.empty(rows.size() + 1));
        rows.add(GroupRow.empty(rows.size() + 1));
        return rows;
    }

    public String value(String key) {
        return fields.getOrDefault(key, "");
    }

    /** The guideline as a task file has it. */
    Map<String, Object> asMap() {
        Map<String, Object> marking = new LinkedHashMap<>();
        if (!value("name").isEmpty()) {
            marking.put("name", value("name"));
        }
        Map<String, Object> tolerance = new LinkedHashMap<>();
        putNumber(tolerance, "length", "tolerance.length");
        putNumber(tolerance, "thickness", "tolerance.thickness");
        putNumber(tolerance, "angle", "tolerance.angle");
        if (!tolerance.isEmpty()) {
            marking.put("tolerance", tolerance);
        }
        putNumber(marking, "borderline", "borderline");
        if (!groups.isEmpty()) {
            Map<String, Object> all = new LinkedHashMap<>();
            groups.forEach(group -> all.put(group.id(), asMap(group)));
            marking.put("groups", all);
        }
        marking.put("criteria", criteria.stream().map(CriterionRow::asMap).toList());
        return marking;
    }

    private void putNumber(Map<String, Object> map, String key, String field) {
        if (!value(field).isEmpty()) {
            map.put(key, FormNumber.read(value(field)));
        }
    }

    private static Map<String, Object> asMap(GroupRow group) {
        Map<String, Object> written = new LinkedHashMap<>();
        if (!group.title().isEmpty()) {
            written.put("title", group.title());
        }
        written.put("maximum", FormNumber.read(group.maximum()));
        return written;
    }

    /** What is wrong that the guideline itself cannot show: groups without a word of their own. */
    List<Fault> faults() {
        List<Fault> faults = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        for (GroupRow group : groups) {
            if (group.id().isEmpty() || !taken.add(group.id())) {
                faults.add(new Fault(
                        "marking.groups[%d].id".formatted(group.number()),
                        group.id(),
                        "a word of its own, by which the criteria name the group"));
            }
        }
        return faults;
    }

    /** The id of the field that a fault belongs to. */
    String anchor(Fault fault) {
        Matcher criterion = CRITERION.matcher(fault.key());
        if (criterion.matches()) {
            return criteria.get(Integer.parseInt(criterion.group(1)) - 1).anchor(field(criterion.group(2)));
        }
        Matcher group = GROUP.matcher(fault.key());
        if (group.matches()) {
            return groups.stream()
                    .filter(row -> row.id().equals(group.group(1)))
                    .findFirst()
                    .map(row -> row.anchor(group.group(2)))
                    .orElse("groups");
        }
        return fault.key().replace("marking.", "").replace("[", "-").replace("]", "").replace('.', '-');
    }

    private static String field(String key) {
        return switch (key) {
            case "measure", "part", "lines", "teacher" -> CriterionRow.LOOKS_AT;
            case "accepted" -> "from";
            case "part-marks" -> "limit-1";
            default -> key;
        };
    }
}
