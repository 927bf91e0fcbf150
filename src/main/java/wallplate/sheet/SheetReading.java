package wallplate.sheet;

import java.util.Optional;

/** What came of reading a page: a level page, or a refusal that says why and what to do. */
public sealed interface SheetReading {

    record Readable(LevelPage page) implements SheetReading {}

    /**
     * @param reason one sentence that a learner of fourteen understands, with what can be done about it
     * @param code what the code printed on the sheet says; a sheet that cannot be read may still say whose it is
     * @param unscaled the level page in millimetres that are only guessed, where nothing is missing but a scale: both ticks
     *     of its bar, shown by a person, make it readable
     */
    record Unreadable(String reason, Optional<SheetCode> code, Optional<LevelPage> unscaled) implements SheetReading {

        Unreadable(String reason) {
            this(reason, Optional.empty(), Optional.empty());
        }

        Unreadable withCode(Optional<SheetCode> read) {
            return new Unreadable(reason, read, unscaled);
        }
    }
}
