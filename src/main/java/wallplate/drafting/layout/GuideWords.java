package wallplate.drafting.layout;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wallplate.solver.ConstructionStep;

/**
 * The texts of the construction guide in a language.
 *
 * <p>The solver gives the steps in English, made of whole sentences with sizes in them. Other languages have each
 * sentence by its English words; a sentence that a language has no words for is given as it is.
 */
public final class GuideWords {

    private static final String BUNDLE = "messages.guide";
    private static final ResourceBundle.Control NO_FALLBACK =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    /** After a full stop and before a capital: the point in a number is followed by a digit. */
    private static final Pattern BETWEEN_SENTENCES = Pattern.compile("(?<=\\.) +(?=\\p{Lu})");

    private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");
    private static final Pattern DECIMAL_POINT = Pattern.compile("(?<=\\d)\\.(?=\\d)");

    private static final Map<String, Pattern> ENGLISH = patterns();

    private final Locale language;
    private final ResourceBundle texts;

    private GuideWords(Locale language) {
        this.language = language;
        this.texts = ResourceBundle.getBundle(BUNDLE, language, NO_FALLBACK);
    }

    public static GuideWords in(Locale language) {
        return new GuideWords(language);
    }

    /** Texts with most words of their own come first, so that the more exact one is found. */
    private static Map<String, Pattern> patterns() {
        ResourceBundle english = ResourceBundle.getBundle(BUNDLE, Locale.ROOT, NO_FALLBACK);
        Map<String, Pattern> patterns = new LinkedHashMap<>();
        english.keySet().stream()
                .filter(key -> key.contains("."))
                .sorted(Comparator.comparingInt((String key) -> -ownWords(english.getString(key)))
                        .thenComparing(Comparator.naturalOrder()))
                .forEach(key -> patterns.put(key, pattern(english.getString(key))));
        return patterns;
    }

    private static int ownWords(String text) {
        return PLACE.matcher(text).replaceAll("").length();
    }

    private static Pattern pattern(String text) {
        return Pattern.compile("\\Q" + PLACE.matcher(text).replaceAll("\\\\E(.+?)\\\\Q") + "\\E");
    }

    public Locale language() {
        return language;
    }

    /** A text of the guide itself with its places filled. */
    public String text(String key, String... places) {
        return filled(texts.getString(key), List.of(places));
    }

    /** The step with its texts in the language. */
    public ConstructionStep worded(ConstructionStep step) {
        return new ConstructionStep(
                step.number(),
                step.part(),
                say(step.title()),
                step.calculation().stream().map(this::say).toList(),
                Stream.of(BETWEEN_SENTENCES.split(step.instruction()))
                        .map(this::say)
                        .collect(Collectors.joining(" ")),
                step.faint(),
                step.linedIn());
    }

    private String say(String english) {
        if (language.getLanguage().equals(Locale.ENGLISH.getLanguage())) {
            return english;
        }
        for (Map.Entry<String, Pattern> text : ENGLISH.entrySet()) {
            Matcher matcher = text.getValue().matcher(english);
            if (matcher.matches()) {
                List<String> places = Stream.iterate(1, group -> group <= matcher.groupCount(), group -> group + 1)
                        .map(group -> say(matcher.group(group)))
                        .toList();
                return filled(texts.getString(text.getKey()), places);
            }
        }
        return DECIMAL_POINT.matcher(english).replaceAll(texts.getString("decimal-sign"));
    }

    private static String filled(String text, List<String> places) {
        return PLACE.matcher(text)
                .replaceAll(place -> Matcher.quoteReplacement(places.get(Integer.parseInt(place.group(1)))));
    }
}
