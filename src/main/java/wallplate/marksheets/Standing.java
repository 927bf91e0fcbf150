package wallplate.marksheets;

import java.util.Locale;

/** What a learner's place in the column of a task stands for. */
public enum Standing {
    /** The marks of the sheet count. */
    MARKED,
    /** The marks count less what the mark sheet takes off for being late. */
    LATE,
    /** Counts as no marks. */
    ABSENT,
    /** Does not count: neither the marks nor the weight of the task. */
    EXCUSED,
    /** Nothing can be said yet: there is no sheet, or a criterion of it waits for a person. */
    OPEN;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Standing of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
