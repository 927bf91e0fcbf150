package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.Map;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.Yaml;

/**
 * An invented drawing task: real sizes in millimetres by dotted key, in the order of a task file.
 *
 * @param sizes the keys of a task file below {@code eaves}, such as {@code wall.thickness}, {@code pitch} and {@code
 *     support.name}; a part is asked for where any of its keys is there
 */
record SampleTask(
        String id, String title, int scale, boolean eavesRight, Map<String, Object> sizes, Paper paper, int barMm) {

    boolean asksFor(String part) {
        return sizes.keySet().stream().anyMatch(key -> key.equals(part) || key.startsWith(part + "."));
    }

    /** Whether it is the section through a lean-to roof rather than that through the eaves of a pitched one. */
    boolean isLeanTo() {
        return asksFor("high-wall");
    }

    double real(String key) {
        if (sizes.get(key) instanceof Number number) {
            return number.doubleValue();
        }
        throw new IllegalArgumentException("the task has no size " + key);
    }

    double onPaper(String key) {
        return real(key) / scale;
    }

    /** Distance from the outer wall face to the plate's outer edge, real millimetres. */
    double setIn() {
        double room = real("wall.thickness") - real("wall-plate.width");
        String flush = String.valueOf(sizes.get("wall.plate-flush"));
        return flush.equals("inner") ? room : flush.equals("centre") ? room / 2 : 0;
    }

    boolean asksForBeamFilling() {
        return setIn() / scale >= 1.5;
    }

    /** The exact size on paper of each measured key that has a number, in the order of the detail's table. */
    Map<String, Double> expected() {
        Map<String, Double> expected = new LinkedHashMap<>();
        expected.put("roof.pitch", real("pitch"));
        expected.put("rafter.heel-offset", 0.0);
        copy(expected, "wall.thickness", "wall-plate.width", "wall-plate.depth", "tie-beam.depth", "rafter.depth");
        copy(expected, "rafter.overhang", "support.depth", "support.width", "support.spacing", "covering.thickness");
        expected.put("covering.gap", onPaper("support.depth"));
        copy(expected, "covering.projection", "fascia.thickness", "fascia.depth", "gutter.width", "gutter.depth");
        copy(expected, "barge-board.depth", "barge-board.clearance");
        if (asksFor("ceiling")) {
            expected.put("ceiling.drop", onPaper("ceiling.brander.depth"));
            expected.put("brander.width", onPaper("ceiling.brander.width"));
            expected.put("brander.depth", onPaper("ceiling.brander.depth"));
            expected.put("brander.spacing", onPaper("ceiling.brander.spacing"));
        }
        if (isLeanTo()) {
            copy(expected, "high-wall.clear-span", "high-wall.thickness", "high-plate.width", "high-plate.depth");
            double run = real("wall.thickness") - setIn() + real("high-wall.clear-span");
            expected.put("high-plate.rise", run * Math.tan(Math.toRadians(real("pitch"))) / scale);
        }
        if (asksFor("posts")) {
            expected.put("post.width", onPaper("posts.width"));
            expected.put("post.position", onPaper("posts.span") / real("posts.equal-spaces"));
        }
        return expected;
    }

    private void copy(Map<String, Double> expected, String... keys) {
        for (String key : keys) {
            if (sizes.containsKey(key)) {
                expected.put(key, onPaper(key));
            }
        }
    }

    /** The task as the text of a task file. */
    String toYaml() {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("id", id);
        root.put("title", title);
        root.put("detail", isLeanTo() ? "mono-pitch-section" : "eaves-section");
        root.put("scale", "1:" + scale);
        root.put("eaves", eavesRight ? "right" : "left");
        sizes.forEach((key, value) -> place(root, key, plain(value)));
        Map<String, Object> sheet = new LinkedHashMap<>();
        sheet.put("size", paper.size());
        sheet.put("orientation", paper.landscape() ? "landscape" : "portrait");
        sheet.put("reference-bar", barMm);
        root.put("sheet", sheet);
        DumperOptions options = new DumperOptions();
        options.setDefaultFlowStyle(DumperOptions.FlowStyle.BLOCK);
        options.setLineBreak(DumperOptions.LineBreak.UNIX);
        return new Yaml(options).dump(root);
    }

    @SuppressWarnings("unchecked")
    private static void place(Map<String, Object> root, String dottedKey, Object value) {
        Map<String, Object> inner = root;
        String[] steps = dottedKey.split("\\.");
        for (int step = 0; step < steps.length - 1; step++) {
            inner = (Map<String, Object>) inner.computeIfAbsent(steps[step], name -> new LinkedHashMap<String, Object>());
        }
        inner.put(steps[steps.length - 1], value);
    }

    private static Object plain(Object value) {
        if (value instanceof Double number && number == Math.rint(number)) {
            return number.intValue();
        }
        return value;
    }
}
