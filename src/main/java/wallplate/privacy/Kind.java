package wallplate.privacy;

import java.util.Locale;

/** Kinds of data that have a time of their own. The order is that in which they are taken away. */
public enum Kind {
    /** The scans themselves, counted from when they came; sheets, pictures of pages and marks stay. */
    SCANS,
    /** The level pages' pictures, counted from when the sheet was read; a blank page stands in their place. */
    PICTURES,
    /** Learners' codes for their own feedback, counted from when they were made. */
    FEEDBACK_CODES,
    /** Class sets with their sheets and marks, counted from when the last of their sheets was read. */
    CLASS_SETS,
    /** Mark sheets, counted from when they were submitted; drafts from when they were begun. */
    MARK_SHEETS,
    /** Learners who have left their last class, counted from that day; those with a sheet stay. */
    LEARNERS,
    /** Entries of the audit trail, the oldest first; the trail then begins with the first that is left. */
    AUDIT;

    /** The word in settings and texts. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
