package wallplate.task;

import java.util.LinkedHashMap;
import java.util.Map;
import wallplate.task.yaml.Entry;
import wallplate.task.yaml.YamlText;

/**
 * Task files: YAML 1.1 text to a checked task, all faults at once, and a task back to text without loss.
 *
 * <p>Numbers may stand in quotes; the scale must, since YAML 1.1 reads an unquoted {@code 1:20} as the number 80.
 */
public final class TaskFile {

    private TaskFile() {}

    /** Reads and checks a task file; whatever stands in it, the answer is a task or the list of its faults. */
    public static TaskReading read(String yaml) {
        YamlText.Reading reading = YamlText.read(yaml);
        boolean unreadable =
                reading.top().entries().isEmpty() && !reading.faults().isEmpty();
        return unreadable
                ? new TaskReading.Refused(reading.faults())
                : TaskCheck.ofFile(reading.top(), reading.faults());
    }

    /**
     * Checks values from a form as if they had stood in a file.
     *
     * @param fields what was typed, by dotted key such as {@code ceiling.brander.width} or {@code sheet.size}; blank
     *     fields count as not there
     * @param marking the marking guideline to keep, empty for the default
     */
    public static TaskReading read(Map<String, String> fields, Map<String, Object> marking) {
        Map<String, Object> tree = new LinkedHashMap<>();
        fields.forEach((key, text) -> {
            if (!text.isBlank()) {
                place(tree, key, new Entry.Scalar(text.strip(), true, Entry.Kind.TEXT));
            }
        });
        return TaskCheck.ofForm(group(tree), marking);
    }

    /** The task as a file that {@link #read(String)} reads back to an equal task. */
    public static String write(DrawingTask task) {
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("id", task.id());
        file.put("title", task.title());
        file.put("detail", task.detail());
        file.put("scale", task.scale().toString());
        file.put("eaves", task.eaves().word());
        task.sizes()
                .asMap()
                .forEach((key, value) -> place(file, key, value instanceof Double number ? typed(number) : value));
        Map<String, Object> sheet = new LinkedHashMap<>();
        sheet.put("size", task.sheet().name());
        sheet.put("orientation", task.sheet().landscape() ? "landscape" : "portrait");
        sheet.put("reference-bar", typed(task.sheet().referenceBarMm()));
        file.put("sheet", sheet);
        if (!task.marking().isEmpty()) {
            file.put("marking", task.marking());
        }
        return YamlText.write(file);
    }

    /** A marking guideline alone, as it stands in a task file. */
    public static String writeMarking(Map<String, Object> marking) {
        return YamlText.write(Map.of("marking", marking));
    }

    /**
     * A marking guideline that {@link #writeMarking} wrote.
     *
     * @throws IllegalArgumentException where the text is no such thing
     */
    public static Map<String, Object> readMarking(String yaml) {
        YamlText.Reading text = YamlText.read(yaml);
        EntryReader reader = new EntryReader(text.top(), text.faults());
        Map<String, Object> marking = new MarkingCheck(reader).marking();
        if (!reader.faults().isEmpty()) {
            throw new IllegalArgumentException("this is no marking guideline: " + reader.faults());
        }
        return marking;
    }

    /** Whole numbers without a fraction, as people write them. */
    private static Object typed(double number) {
        boolean whole = number == Math.rint(number) && Math.abs(number) < 1e15;
        return whole ? (Object) (long) number : (Object) new java.math.BigDecimal(PlainNumber.text(number));
    }

    @SuppressWarnings("unchecked")
    private static void place(Map<String, Object> tree, String dottedKey, Object value) {
        String[] path = dottedKey.split("\\.");
        Map<String, Object> group = tree;
        for (int i = 0; i < path.length - 1; i++) {
            Object below = group.computeIfAbsent(path[i], key -> new LinkedHashMap<String, Object>());
            if (!(below instanceof Map)) {
                return;
            }
            group = (Map<String, Object>) below;
        }
        group.put(path[path.length - 1], value);
    }

    @SuppressWarnings("unchecked")
    private static Entry.Group group(Map<String, Object> tree) {
        Map<String, Entry> entries = new LinkedHashMap<>();
        tree.forEach((key, value) ->
                entries.put(key, value instanceof Entry entry ? entry : group((Map<String, Object>) value)));
        return new Entry.Group(entries);
    }
}
