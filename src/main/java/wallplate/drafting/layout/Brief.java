package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.drafting.paper.Decimals;
import wallplate.task.DrawingTask;

/** The task in words: one line a part with its sizes, as far as the task file goes, whatever the detail. */
final class Brief {

    private final DrawingTask task;

    Brief(DrawingTask task) {
        this.task = task;
    }

    List<String> lines() {
        Map<String, List<String>> parts = new LinkedHashMap<>();
        task.sizes().asMap().forEach((key, value) -> {
            int dot = key.indexOf('.');
            String part = dot < 0 ? key : key.substring(0, dot);
            String size = dot < 0 ? "" : words(key.substring(dot + 1)) + " ";
            parts.computeIfAbsent(words(part), unused -> new ArrayList<>()).add(size + said(key, value));
        });
        List<String> lines = new ArrayList<>();
        lines.add("Draw to scale %s, eaves on the %s. Real sizes in mm."
                .formatted(task.scale(), task.eaves().word()));
        parts.forEach((part, sizes) -> lines.add(part + ": " + String.join(", ", sizes)));
        return lines;
    }

    private static String words(String key) {
        return key.replace('-', ' ').replace('.', ' ');
    }

    private static String said(String key, Object value) {
        if (value instanceof Double number) {
            return Decimals.figure(number) + (key.equals("pitch") ? "°" : "");
        }
        return words(value.toString());
    }
}
