package wallplate.web.guideline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import wallplate.marking.LineAspect;
import wallplate.marking.LineWords;
import wallplate.marking.TradeNames;
import wallplate.report.Topic;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/**
 * What a guideline may look at in a task, in words.
 *
 * @param keys every measured key with its name
 * @param parts every part with its name
 * @param keysByPart the keys of each part, by the part's name as a heading
 * @param counts the keys that count something
 * @param lines what may be asked of the lines themselves, with its name and unit
 */
record GuidelineWords(
        Map<String, String> keys,
        Map<String, String> parts,
        Map<String, List<String>> keysByPart,
        List<String> counts,
        Map<String, String> lines) {

    static GuidelineWords of(ExpectedDrawing expected, Locale language) {
        TradeNames names = TradeNames.in(language, expected.task());
        Map<String, String> keys = new LinkedHashMap<>();
        Map<String, String> parts = new LinkedHashMap<>();
        Map<String, List<String>> keysByPart = new LinkedHashMap<>();
        expected.values().forEach(value -> {
            keysByPart
                    .computeIfAbsent(names.heading(Topic.partOf(value.key())), part -> new ArrayList<>())
                    .add(value.key());
            keys.put(value.key(), names.title(value.key()));
            parts.put(Topic.partOf(value.key()), names.part(Topic.partOf(value.key())));
        });
        List<String> counts = expected.values().stream()
                .filter(Expected.Count.class::isInstance)
                .map(Expected::key)
                .toList();
        return new GuidelineWords(keys, parts, keysByPart, counts, lines(language));
    }

    private static Map<String, String> lines(Locale language) {
        LineWords words = LineWords.in(language);
        Map<String, String> lines = new LinkedHashMap<>();
        Arrays.stream(LineAspect.values())
                .forEach(aspect -> lines.put(
                        aspect.word(),
                        aspect.unit().isEmpty() ? words.name(aspect) : words.name(aspect) + " (" + aspect.unit() + ")"));
        return lines;
    }

    /** Keys that a criterion names and the task no longer asks for: shown, so that none is lost unseen. */
    public List<String> unknownKeys(CriterionRow row) {
        return row.keys().stream().filter(key -> !keys.containsKey(key)).toList();
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
        if (looksAt.startsWith(CriterionRow.LINES)) {
            String aspect = looksAt.substring(CriterionRow.LINES.length());
            return lines.getOrDefault(aspect, aspect);
        }
        return row.value("id");
    }
}
