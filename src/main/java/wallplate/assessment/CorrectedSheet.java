package wallplate.assessment;

/** What came of correcting a sheet's reading. */
public sealed interface CorrectedSheet {

    /** The sheet measured and marked again. */
    record Corrected(AssessedSheet.Read sheet) implements CorrectedSheet {}

    /**
     * The correction cannot be what was meant.
     *
     * @param reason a sentence with what was found and what to do
     */
    record Refused(String reason) implements CorrectedSheet {}
}
