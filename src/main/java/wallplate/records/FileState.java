package wallplate.records;

import java.util.Locale;

/** Where a received scan file stands. */
public enum FileState {
    WAITING,
    READING,
    /** Every page of it has been looked at. */
    DONE,
    /** A person stopped the reading; it can be taken up again. */
    STOPPED,
    /** The file as a whole could not be read, with a reason. */
    REFUSED;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static FileState of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
