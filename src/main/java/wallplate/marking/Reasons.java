package wallplate.marking;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Why something cannot be told or read, and what a guideline accepts instead of a fault, in the words of a language.
 *
 * <p>Reading and measuring give their reasons in English, and so does the reader of guidelines. A reason that a language has no words for is given as it is.
 */
public final class Reasons {

    private static final String BUNDLE = "messages.reasons";
    private static final Pattern PLACE = Pattern.compile("\\{(what|other)}");

    private static final Pattern NUMBER = Pattern.compile("\\d+\\.\\d+");

    private static final ResourceBundle ENGLISH_TEXTS = ResourceBundle.getBundle(
            BUNDLE,
            Locale.ROOT,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    private static final Map<String, Pattern> ENGLISH = patterns();

    private final Phrases phrases;

    private final String decimalSign;

    private Reasons(Phrases phrases) {
        this.phrases = phrases;
        this.decimalSign = Phrases.of(Wording.BUNDLE, phrases.language()).text("value.decimal-sign");
    }

    public static Reasons in(Locale language) {
        return new Reasons(Phrases.of(BUNDLE, language));
    }

    /** Texts without a place to fill come first, so that the more exact one is found. */
    private static Map<String, Pattern> patterns() {
        Map<String, Pattern> patterns = new LinkedHashMap<>();
        for (boolean filled : new boolean[] {false, true}) {
            for (String key : new TreeSet<>(ENGLISH_TEXTS.keySet())) {
                String text = ENGLISH_TEXTS.getString(key);
                if (PLACE.matcher(text).find() == filled) {
                    patterns.put(
                            key,
                            Pattern.compile("\\Q" + PLACE.matcher(text).replaceAll("\\\\E(?<$1>.+)\\\\Q") + "\\E"));
                }
            }
        }
        return patterns;
    }

    /** The reason in the language. */
    public String say(String reason) {
        return phrases.language().getLanguage().equals(Locale.ENGLISH.getLanguage())
                ? reason
                : translated(reason).orElse(reason);
    }

    /** What fills a place: a reason of its own, or a number as the language writes it. */
    private String place(String what) {
        return NUMBER.matcher(what).matches() ? what.replace(".", decimalSign) : say(what);
    }

    private Optional<String> translated(String reason) {
        for (Map.Entry<String, Pattern> text : ENGLISH.entrySet()) {
            Matcher matcher = text.getValue().matcher(reason);
            if (matcher.matches()) {
                Map<String, String> places = new LinkedHashMap<>();
                PLACE.matcher(ENGLISH_TEXTS.getString(text.getKey()))
                        .results()
                        .map(place -> place.group(1))
                        .forEach(place -> places.put(place, place(matcher.group(place))));
                return Optional.of(phrases.text(text.getKey(), places));
            }
        }
        return Optional.empty();
    }
}
