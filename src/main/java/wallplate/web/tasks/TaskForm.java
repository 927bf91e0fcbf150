package wallplate.web.tasks;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import wallplate.task.DetailSchema;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.Fault;
import wallplate.task.PartSchema;
import wallplate.task.PlainNumber;
import wallplate.task.SizeKey;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * A task as it is being filled in.
 *
 * @param detail what is drawn; the fields follow from it
 * @param fields what stands in each field, by the dotted key of the task file
 * @param drawn the optional parts that are to be drawn
 */
record TaskForm(DetailSchema detail, Map<String, String> fields, Set<String> drawn) {

    private static final List<String> COMMON =
            List.of("id", "title", "scale", "eaves", "sheet.size", "sheet.orientation", "sheet.reference-bar");
    /** What stands at the fields that every detail has. */
    private static final Map<String, String> TITLES = Map.of(
            "title", "Title",
            "scale", "Scale",
            "eaves", "Overhang",
            "sheet.size", "Paper",
            "sheet.orientation", "Lying or upright",
            "sheet.reference-bar", "Reference bar");
    private static final String DRAWN = "drawn.";
    private static final String UNTITLED = "Untitled task";
    private static final int LONGEST_ID = 60;

    TaskForm {
        fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
        drawn = Collections.unmodifiableSet(new LinkedHashSet<>(drawn));
    }

    /** A form filled with usual sizes. */
    static TaskForm usual(DetailSchema detail) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("scale", "1:20");
        fields.put("eaves", "left");
        fields.put("sheet.size", "A4");
        fields.put("sheet.orientation", "landscape");
        fields.put("sheet.reference-bar", "100");
        detail.keys().forEach(key -> fields.put(key.key(), key.example()));
        return new TaskForm(detail, fields, optionalParts(detail));
    }

    /** A form filled from a task; parts that it leaves out show usual sizes, in case they are wanted. */
    static TaskForm of(DrawingTask task) {
        DetailSchema detail = Details.of(task);
        Map<String, String> fields = new LinkedHashMap<>(usual(detail).fields);
        fields.put("id", task.id());
        fields.put("title", task.title());
        fields.put("scale", task.scale().toString());
        fields.put("eaves", task.eaves().word());
        fields.put("sheet.size", task.sheet().name());
        fields.put("sheet.orientation", task.sheet().landscape() ? "landscape" : "portrait");
        fields.put("sheet.reference-bar", PlainNumber.text(task.sheet().referenceBarMm()));
        task.sizes().asMap().forEach((key, value) ->
                fields.put(key, value instanceof Double number ? PlainNumber.text(number) : value.toString()));
        Set<String> drawn = new LinkedHashSet<>(optionalParts(detail));
        drawn.removeIf(part -> !task.sizes().has(part));
        return new TaskForm(detail, fields, drawn);
    }

    /** What a person typed; what belongs to no field is passed over. */
    static TaskForm typed(Map<String, String> typed) {
        DetailSchema detail = Details.find(typed.getOrDefault("detail", "")).orElse(Details.all().get(0));
        Map<String, String> fields = new LinkedHashMap<>();
        COMMON.forEach(key -> fields.put(key, typed.getOrDefault(key, "").strip()));
        detail.keys().forEach(key -> fields.put(key.key(), typed.getOrDefault(key.key(), "").strip()));
        Set<String> drawn = new LinkedHashSet<>(optionalParts(detail));
        drawn.removeIf(part -> !typed.containsKey(DRAWN + part));
        return new TaskForm(detail, fields, drawn);
    }

    private static Set<String> optionalParts(DetailSchema detail) {
        Set<String> parts = new LinkedHashSet<>();
        detail.parts().stream().filter(PartSchema::optional).map(PartSchema::name).forEach(parts::add);
        return parts;
    }

    /** The task, or every fault in it. */
    TaskReading read(Map<String, Object> marking) {
        return TaskFile.read(wanted(), marking);
    }

    /** The same with a title lent to it, for a drawing while the title is still being thought of. */
    TaskReading readForPreview() {
        Map<String, String> wanted = wanted();
        if (value("title").isEmpty()) {
            wanted.put("title", UNTITLED);
            wanted.put("id", "untitled-task");
        }
        return TaskFile.read(wanted, Map.of());
    }

    private Map<String, String> wanted() {
        Map<String, String> wanted = new LinkedHashMap<>();
        wanted.put("detail", detail.id());
        COMMON.forEach(key -> wanted.put(key, value(key)));
        if (value("id").isEmpty()) {
            wanted.put("id", idFrom(value("title")));
        }
        for (PartSchema part : detail.parts()) {
            if (!part.optional() || drawn.contains(part.name())) {
                part.keys().forEach(key -> wanted.put(key.key(), value(key.key())));
            }
        }
        return wanted;
    }

    /** Lower case words joined by hyphens, made of the title. */
    private static String idFrom(String title) {
        String plain = Normalizer.normalize(title, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-+|-+$", "");
        String cut = plain.length() <= LONGEST_ID ? plain : plain.substring(0, LONGEST_ID).replaceAll("-+$", "");
        return title.isBlank() ? "" : cut.isEmpty() ? "task" : cut;
    }

    public String value(String key) {
        return fields.getOrDefault(key, "");
    }

    public boolean draws(PartSchema part) {
        return !part.optional() || drawn.contains(part.name());
    }

    /** The name of the box that says whether an optional part is drawn. */
    public String drawnBox(PartSchema part) {
        return DRAWN + part.name();
    }

    /** An id for the field of a key, which a page may point at. */
    public String anchor(String key) {
        return key.replace('.', '-');
    }

    /** A fault in the words that stand at the fields; in a task file its key says where it is. */
    public String say(Fault fault) {
        String what = fault.found().isEmpty() ? "is missing" : "found " + fault.found();
        return "%s: %s; accepted: %s".formatted(title(fault.key()), what, fault.accepted());
    }

    private String title(String key) {
        return detail.parts().stream()
                .flatMap(part -> part.keys().stream()
                        .filter(size -> size.key().equals(key))
                        .map(size -> part.label() + ", " + uncapitalised(size.label())))
                .findFirst()
                .orElse(TITLES.getOrDefault(key, key));
    }

    private static String uncapitalised(String words) {
        return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    /** The keys that have a field of their own, so that a fault can stand at it. */
    public List<String> keys() {
        List<String> keys = new ArrayList<>(COMMON);
        detail.keys().map(SizeKey::key).forEach(keys::add);
        return keys;
    }

    public boolean isChoice(SizeKey key) {
        return key instanceof SizeKey.Choice;
    }

    public boolean isQuantity(SizeKey key) {
        return key instanceof SizeKey.Quantity;
    }
}
