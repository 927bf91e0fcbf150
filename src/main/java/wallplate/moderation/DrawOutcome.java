package wallplate.moderation;

/** What came of drawing a sample. */
public sealed interface DrawOutcome {

    record Drawn(Moderation moderation) implements DrawOutcome {}

    /** @param because a sentence with a way on */
    record NotDrawn(String because) implements DrawOutcome {}
}
