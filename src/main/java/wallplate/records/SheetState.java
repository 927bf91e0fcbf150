package wallplate.records;

import java.util.Locale;

/** Where a sheet stands on its way from the scanner to a mark. */
public enum SheetState {
    WAITING,
    READING,
    READ,
    /** Looked at and refused, with a reason that a person can act on. */
    UNREADABLE,
    /** Set aside because reading it failed more than once. */
    FAILED;

    /** The word in the database and in pages. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static SheetState of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    public boolean isFinished() {
        return this == READ || this == UNREADABLE || this == FAILED;
    }
}
