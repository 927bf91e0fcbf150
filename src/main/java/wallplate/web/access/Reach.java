package wallplate.web.access;

/** What kind of record an address names, which must be within the reach of whoever opens it. */
enum Reach {
    /** The address names none. */
    NOTHING,
    /** It names none, and is about the account of whoever opens it: not for visitors, who have none. */
    OWN_ACCOUNT,
    SET,
    SHEET,
    TASK,
    CLASS,
    LEARNER,
    MARK_SHEET,
    /** A sample marked a second time, for the set's teacher and the head of department. */
    MODERATION,
    /** The same, for its second marker too. */
    SAMPLE,
    /** The same, for its second marker only. */
    SAMPLE_TO_MARK,
    PICTURE
}
