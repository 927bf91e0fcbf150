package wallplate.task;

/** On which side of the sheet the overhang lies. */
public enum EavesSide {
    /** The overhang on the left: the inside of the building lies to the right. */
    LEFT,
    /** The overhang on the right: the drawing is the mirror image. */
    RIGHT;

    /** The word of the task and result files. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
