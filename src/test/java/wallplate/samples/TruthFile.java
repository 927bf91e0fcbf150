package wallplate.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.json.JsonMapper;
import wallplate.geometry.Segment;

/** The truth about one captured sheet, as JSON. */
final class TruthFile {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private TruthFile() {}

    /**
     * The file's text.
     *
     * @param hopeless why the sheet must be refused, empty for a sheet that can be read; the truth is then left empty
     */
    static String of(String file, Intention intention, SheetDrawing sheet, Capture capture, String hopeless) {
        Map<String, Object> root = drawn(file, intention, sheet, hopeless);
        root.put("condition", capture.condition());
        root.put("toPixels", capture.map().truth());
        return JSON.writeValueAsString(root);
    }

    /** The truth about a sheet that nobody captured. */
    static String ofDrawing(String file, Intention intention, SheetDrawing sheet) {
        return JSON.writeValueAsString(drawn(file, intention, sheet, ""));
    }

    private static Map<String, Object> drawn(
            String file, Intention intention, SheetDrawing sheet, String hopeless) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("file", file);
        root.put("task", intention.task().id());
        root.put("hopeless", hopeless.isEmpty() ? null : hopeless);
        root.put("bar", bar(sheet, hopeless));
        root.put("expected", intention.task().expected());
        root.put("slips", intention.slips().stream()
                .map(slip -> {
                    Map<String, Object> entry = new LinkedHashMap<>();
                    entry.put("key", slip.key());
                    entry.put("slip", slip.slip());
                    return entry;
                })
                .toList());
        root.put("truth", hopeless.isEmpty() ? truth(intention, sheet) : Map.of());
        root.put("lines", lines(sheet));
        return root;
    }

    private static Map<String, Object> bar(SheetDrawing sheet, String hopeless) {
        Map<String, Object> bar = new LinkedHashMap<>();
        boolean present = sheet.bar().isPresent() && hopeless.isEmpty();
        bar.put("present", present);
        sheet.bar().filter(drawn -> present).ifPresent(drawn -> {
            bar.put("nominalMm", drawn.nominalMm());
            bar.put("trueMm", drawn.trueMm());
            bar.put("line", ends(drawn.line(), 1e9));
        });
        return bar;
    }

    private static Map<String, Object> truth(Intention intention, SheetDrawing sheet) {
        double level = intention.task().isLeanTo()
                ? sheet.tiltDegrees()
                : TruthMeasures.levelDegrees(sheet.lines()).orElse(sheet.tiltDegrees());
        Map<String, TruthMeasures.Truth> measured =
                new TruthMeasures(intention.task(), sheet.lines(), intention.eavesOnRight(), level).all();
        Map<String, Object> truth = new LinkedHashMap<>();
        measured.forEach((key, found) -> truth.put(key, entry(key, found, sheet)));
        return truth;
    }

    private static Map<String, Object> entry(String key, TruthMeasures.Truth found, SheetDrawing sheet) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("state", found.value().isPresent() ? "measured" : "absent");
        found.value().ifPresent(value -> {
            entry.put("value", value);
            if (value instanceof Double length && !key.equals("roof.pitch")) {
                sheet.bar().ifPresent(bar -> entry.put("valueByBar", length * bar.nominalMm() / bar.trueMm()));
            }
        });
        return entry;
    }

    private static Map<String, Object> lines(SheetDrawing sheet) {
        Map<String, Object> lines = new LinkedHashMap<>();
        sheet.lines().forEach((name, line) -> lines.put(name, ends(line, 1000)));
        return lines;
    }

    private static List<Double> ends(Segment line, double steps) {
        List<Double> ends = new ArrayList<>();
        for (double value : new double[] {line.start().x(), line.start().y(), line.end().x(), line.end().y()}) {
            ends.add(Math.round(value * steps) / steps);
        }
        return ends;
    }
}
