package wallplate.sheet;

/** What came of reading a page: a level page, or a refusal that says why and what to do. */
public sealed interface SheetReading {

    record Readable(LevelPage page) implements SheetReading {}

    /**
     * @param reason one sentence that a learner of fourteen understands, with what can be done about it
     */
    record Unreadable(String reason) implements SheetReading {}
}
