package wallplate.marking;

import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;

/**
 * The texts of one bundle in one language, with named places such as {@code {expected}} to be filled in.
 *
 * <p>A language that is not there is given in English.
 */
public final class Phrases {

    private final Locale language;
    private final ResourceBundle bundle;

    private Phrases(Locale language, ResourceBundle bundle) {
        this.language = language;
        this.bundle = bundle;
    }

    /**
     * The texts of a bundle.
     *
     * @param bundleName such as {@code messages.marking}
     */
    public static Phrases of(String bundleName, Locale language) {
        ResourceBundle bundle = ResourceBundle.getBundle(
                bundleName,
                language,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        Locale used = bundle.getLocale().getLanguage().isEmpty() ? Locale.ENGLISH : language;
        return new Phrases(used, bundle);
    }

    /** The language that the texts are really in; numbers are written its way. */
    public Locale language() {
        return language;
    }

    public String text(String key) {
        return bundle.getString(key);
    }

    public String text(String key, Map<String, String> places) {
        return fill(text(key), places);
    }

    /** The text, where the language has one of that name. */
    public Optional<String> find(String key) {
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
