package wallplate.web.guideline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wallplate.marking.Band;
import wallplate.marking.Criterion;
import wallplate.marking.Subject;
import wallplate.task.PlainNumber;

/**
 * One criterion as it is being filled in.
 *
 * @param number its place in the form, from 1
 * @param fields what stands in each field, by the field's name without its row
 */
record CriterionRow(int number, Map<String, String> fields) {

    /** As many bands as a department is likely to want. */
    static final int BANDS = 3;

    static final String LOOKS_AT = "looks-at";
    static final String KEY = "key:";
    static final String PART = "part:";
    static final String SEVERAL = "several";
    static final String KEYS = "keys";
    static final String LINES = "lines:";
    static final String TEACHER = "teacher";

    private static final List<String> FIELDS = Stream.concat(
                    Stream.of(
                            "id", "title", "marks", LOOKS_AT, "from", "to", "note", "tolerance", "unit", "group", "needs",
                            "at-least", "carried"),
                    Stream.iterate(1, band -> band + 1)
                            .limit(BANDS)
                            .flatMap(band -> Stream.of("limit-" + band, "band-" + band)))
            .toList();

    CriterionRow {
        fields = Map.copyOf(fields);
    }

    static CriterionRow empty(int number) {
        return new CriterionRow(number, Map.of("carried", "yes"));
    }

    static CriterionRow of(int number, Criterion criterion) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("id", criterion.id());
        fields.put("title", criterion.title().orElse(""));
        fields.put("marks", PlainNumber.text(criterion.marks()));
        putSubject(fields, criterion.subject());
        criterion.tolerance().ifPresent(tolerance -> {
            fields.put("tolerance", PlainNumber.text(tolerance.value()));
            fields.put("unit", tolerance.unit().word());
        });
        for (int band = 1; band <= criterion.partMarks().size(); band++) {
            Band given = criterion.partMarks().get(band - 1);
            fields.put("limit-" + band, PlainNumber.text(given.limit()));
            fields.put("band-" + band, PlainNumber.text(given.marks()));
        }
        criterion.group().ifPresent(group -> fields.put("group", group));
        criterion.precondition().ifPresent(needed -> {
            fields.put("needs", needed.key());
            fields.put("at-least", Integer.toString(needed.atLeast()));
        });
        if (criterion.consistentWorking()) {
            fields.put("carried", "yes");
        }
        return new CriterionRow(number, fields);
    }

    private static void putSubject(Map<String, String> fields, Subject subject) {
        if (subject instanceof Subject.OneKey one) {
            fields.put(LOOKS_AT, KEY + one.key());
        } else if (subject instanceof Subject.PartDrawn drawn) {
            fields.put(LOOKS_AT, PART + drawn.part());
        } else if (subject instanceof Subject.SeveralKeys several) {
            fields.put(LOOKS_AT, SEVERAL);
            fields.put(KEYS, String.join(" ", several.keys()));
        } else if (subject instanceof Subject.Lines lines) {
            fields.put(LOOKS_AT, LINES + lines.aspect().word());
            fields.put("from", PlainNumber.text(lines.accepted().from()));
            fields.put("to", PlainNumber.text(lines.accepted().to()));
        } else {
            fields.put(LOOKS_AT, TEACHER);
            fields.put("note", ((Subject.TeachersJudgement) subject).note());
        }
    }

    /** What a person typed in the row of that number. */
    static CriterionRow typed(int number, Map<String, String> typed, int typedRow) {
        Map<String, String> fields = new LinkedHashMap<>();
        FIELDS.forEach(field -> {
            String text = typed.getOrDefault("criteria[%d].%s".formatted(typedRow, field), "").strip();
            if (!text.isEmpty()) {
                fields.put(field, text);
            }
        });
        String keys = keysTicked(typed, typedRow);
        if (!keys.isEmpty()) {
            fields.put(KEYS, keys);
        }
        return new CriterionRow(number, fields);
    }

    private static String keysTicked(Map<String, String> typed, int typedRow) {
        String prefix = "criteria[%d].%s.".formatted(typedRow, KEYS);
        return typed.keySet().stream()
                .filter(name -> name.startsWith(prefix))
                .map(name -> name.substring(prefix.length()))
                .collect(Collectors.joining(" "));
    }

    /** The keys ticked, for a criterion that looks at several. */
    public List<String> keys() {
        return value(KEYS).isEmpty() ? List.of() : List.of(value(KEYS).split(" "));
    }

    /** Each field in which something stands, as the form sends it. */
    public Map<String, String> filledIn() {
        Map<String, String> filled = new LinkedHashMap<>();
        FIELDS.stream().filter(field -> !value(field).isEmpty()).forEach(field -> filled.put(field, value(field)));
        keys().forEach(key -> filled.put(KEYS + "." + key, "yes"));
        return filled;
    }

    /** What stands in a field; nothing where it is empty. */
    public String value(String field) {
        return fields.getOrDefault(field, "");
    }

    /** The marks typed, for the row's heading; 1 where nothing or no number stands there. */
    public double marks() {
        return PlainNumber.read(value("marks")).orElse(1);
    }

    /** The name of a field in the form. */
    public String name(String field) {
        return "criteria[%d].%s".formatted(number, field);
    }

    /** The id of a field in the page. */
    public String anchor(String field) {
        return "criteria-%d-%s".formatted(number, field);
    }

    /** Whether nothing was filled in. */
    boolean isEmpty() {
        return fields.keySet().stream().allMatch(field -> field.equals("carried") || field.equals("unit"));
    }

    /** The criterion as a task file has it. */
    Map<String, Object> asMap() {
        Map<String, Object> criterion = new LinkedHashMap<>();
        putText(criterion, "id", "id");
        putText(criterion, "title", "title");
        if (!value("marks").isEmpty()) {
            criterion.put("marks", FormNumber.read(value("marks")));
        }
        putSubject(criterion);
        if (!value("tolerance").isEmpty()) {
            String unit = value("unit").isEmpty() ? "" : " " + value("unit");
            criterion.put("tolerance", value("tolerance").replace(',', '.') + unit);
        }
        List<Map<String, Object>> bands = bands();
        if (!bands.isEmpty()) {
            criterion.put("part-marks", bands);
        }
        putText(criterion, "group", "group");
        if (!value("needs").isEmpty()) {
            Map<String, Object> needs = new LinkedHashMap<>();
            needs.put("key", value("needs"));
            needs.put("at-least", FormNumber.read(value("at-least").isEmpty() ? "1" : value("at-least")));
            criterion.put("needs", needs);
        }
        if (!value("carried").equals("yes")) {
            criterion.put("consistent-working", false);
        }
        return criterion;
    }

    private void putText(Map<String, Object> criterion, String key, String field) {
        if (!value(field).isEmpty()) {
            criterion.put(key, value(field));
        }
    }

    private void putSubject(Map<String, Object> criterion) {
        String looksAt = value(LOOKS_AT);
        if (looksAt.startsWith(KEY)) {
            criterion.put("measure", looksAt.substring(KEY.length()));
        } else if (looksAt.startsWith(PART)) {
            criterion.put("part", looksAt.substring(PART.length()));
        } else if (looksAt.equals(SEVERAL)) {
            criterion.put("measure", keys());
        } else if (looksAt.startsWith(LINES)) {
            criterion.put("lines", looksAt.substring(LINES.length()));
            putAccepted(criterion);
        } else if (looksAt.equals(TEACHER)) {
            criterion.put("teacher", value("note"));
        }
    }

    /** The limits as they were typed; where none were, the usual ones hold. */
    private void putAccepted(Map<String, Object> criterion) {
        Map<String, Object> accepted = new LinkedHashMap<>();
        for (String limit : List.of("from", "to")) {
            if (!value(limit).isEmpty()) {
                accepted.put(limit, FormNumber.read(value(limit)));
            }
        }
        if (!accepted.isEmpty()) {
            criterion.put("accepted", accepted);
        }
    }

    private List<Map<String, Object>> bands() {
        String limit = value(LOOKS_AT).equals(SEVERAL) ? "at-least" : "within";
        List<Map<String, Object>> bands = new ArrayList<>();
        for (int number = 1; number <= BANDS; number++) {
            String upTo = value("limit-" + number);
            String marks = value("band-" + number);
            if (!upTo.isEmpty() || !marks.isEmpty()) {
                Map<String, Object> band = new LinkedHashMap<>();
                band.put(limit, FormNumber.read(upTo));
                band.put("marks", FormNumber.read(marks));
                bands.add(band);
            }
        }
        return bands;
    }
}
