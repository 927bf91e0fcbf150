package wallplate.marking;

import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;

/**
 * The texts of one language, with named places such as {@code {expected}} to be filled in.
 *
 * <p>They stand in {@code messages/marking*.properties}. A language that is not there is given in English.
 */
final class Phrases {

    private static final String BUNDLE = "messages.marking";

    private final Locale language;
    private final ResourceBundle bundle;

    private Phrases(Locale language, ResourceBundle bundle) {
        this.language = language;
        this.bundle = bundle;
    }

    static Phrases in(Locale language) {
        ResourceBundle bundle = ResourceBundle.getBundle(
                BUNDLE,
                language,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        Locale used = bundle.getLocale().getLanguage().isEmpty() ? Locale.ENGLISH : language;
        return new Phrases(used, bundle);
    }

    /** The language that the texts are really in; numbers are written its way. */
    Locale language() {
        return language;
    }

    String text(String key) {
        return bundle.getString(key);
    }

    String text(String key, Map<String, String> places) {
        return fill(text(key), places);
    }

    Optional<String> find(String key) {
        try {
            return Optional.of(bundle.getString(key));
        } catch (MissingResourceException missing) {
            return Optional.empty();
        }
    }

    static String fill(String text, Map<String, String> places) {
        String filled = text;
        for (Map.Entry<String, String> place : places.entrySet()) {
            filled = filled.replace("{" + place.getKey() + "}", place.getValue());
        }
        return filled;
    }
}
