package wallplate.task;

/**
 * The paper and the reference bar that a task asks for, in millimetres.
 *
 * @param name the ISO 216 name, such as A4
 * @param widthMm along the drawing's x axis, so the longer side where landscape
 * @param heightMm along y
 * @param referenceBarMm the nominal length of the level bar that the learner draws
 */
public record SheetFormat(String name, double widthMm, double heightMm, double referenceBarMm) {

    public boolean landscape() {
        return widthMm > heightMm;
    }
}
