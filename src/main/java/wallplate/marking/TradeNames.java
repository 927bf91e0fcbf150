package wallplate.marking;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import wallplate.task.DrawingTask;

/** What the parts and keys of a task are called, with the task's own words for its supports. */
public final class TradeNames {

    private final Phrases phrases;
    private final Map<String, String> places;

    TradeNames(Phrases phrases, DrawingTask task) {
        this.phrases = phrases;
        String support = task.sizes().word("support.name").orElse("support");
        String one = phrases.find("name." + support + ".one").orElse(support);
        String many = phrases.find("name." + support + ".many").orElse(support + "s");
        this.places =
                Map.of("support", one, "supports", many, "Support", capitalised(one), "Supports", capitalised(many));
    }

    /** The names in a language. */
    public static TradeNames in(Locale language, DrawingTask task) {
        return new TradeNames(Phrases.of(Wording.BUNDLE, language), task);
    }

    /** What a key is called, such as "Purlin spacing"; the key itself where the language has no name for it. */
    public String title(String key) {
        return phrases.find("title." + key).map(this::fill).orElse(key);
    }

    /** What a part is called in the middle of a sentence, such as "wall plate". */
    public String part(String part) {
        return phrases.find("part." + part).map(this::fill).orElse(part);
    }

    /** What a part is called over a paragraph, such as "Purlins". */
    public String heading(String part) {
        return phrases.find("heading." + part).map(this::fill).orElseGet(() -> capitalised(part(part)));
    }

    /** A text of the marking bundle with the supports' name filled in. */
    String text(String key) {
        return fill(phrases.text(key));
    }

    String text(String key, Map<String, String> more) {
        Map<String, String> all = new TreeMap<>(places);
        all.putAll(more);
        return phrases.text(key, all);
    }

    String fill(String text) {
        return Phrases.fill(text, places);
    }

    private static String capitalised(String word) {
        return word.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}
