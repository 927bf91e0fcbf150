package wallplate.records;

import java.util.Locale;

/** How a sheet came to its learner, the surest way first. */
public enum MatchedBy {
    /** A person said so; no later run says otherwise. */
    HAND,
    /** The code printed on the sheet. */
    CODE,
    FILE_NAME,
    /** The order of the pile and of the class list. */
    ORDER;

    /** The word in the database and in pages. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static MatchedBy of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
