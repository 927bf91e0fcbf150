package wallplate.web.guideline;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import wallplate.marking.TradeNames;
import wallplate.report.Topic;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/**
 * What a guideline may look at in a task, in words.
 *
 * @param keys every measured key with its name
 * @param parts every part with its name
 * @param counts the keys that count something
 */
record GuidelineWords(Map<String, String> keys, Map<String, String> parts, List<String> counts) {

    static GuidelineWords of(ExpectedDrawing expected, Locale language) {
        TradeNames names = TradeNames.in(language, expected.task());
        Map<String, String> keys = new LinkedHashMap<>();
        Map<String, String> parts = new LinkedHashMap<>();
        expected.values().forEach(value -> {
            keys.put(value.key(), names.title(value.key()));
            parts.put(Topic.partOf(value.key()), names.part(Topic.partOf(value.key())));
        });
        List<String> counts = expected.values().stream()
                .filter(Expected.Count.class::isInstance)
                .map(Expected::key)
                .toList();
        return new GuidelineWords(keys, parts, counts);
    }

    /** What a criterion is called: its own title, else the name of what it looks at; empty for a new one. */
    public String name(CriterionRow row) {
        if (!row.value("title").isEmpty()) {
            return row.value("title");
        }
        String looksAt = row.value(CriterionRow.LOOKS_AT);
        if (looksAt.startsWith(CriterionRow.KEY)) {
            String key = looksAt.substring(CriterionRow.KEY.length());
            return keys.getOrDefault(key, key);
        }
        if (looksAt.startsWith(CriterionRow.PART)) {
            String part = looksAt.substring(CriterionRow.PART.length());
            return parts.getOrDefault(part, part);
        }
        return row.value("id");
    }
}
