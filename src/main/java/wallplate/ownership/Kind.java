package wallplate.ownership;

/** What a record is. */
public enum Kind {
    TASK,
    /** A class of a school year, or the list that belongs to one set. */
    CLASS,
    CLASS_SET,
    MARK_SHEET,
    /** A learner's time in one class: belongs to the class. */
    LEARNER,
    /** All times of one learner in all classes: somebody's only where each of them is. */
    WHOLE_LEARNER,
    /** Belongs to its class set. */
    SHEET,
    /** A page's picture by its name in the store: belongs to every set that has a sheet with it. */
    PICTURE,
    /** A sample: belongs to its class set, and is given to a second marker. */
    MODERATION
}
