package wallplate.assessment;

import java.util.Optional;
import wallplate.marking.MarkedSheet;
import wallplate.measure.MeasuredSheet;
import wallplate.sheet.LevelPage;
import wallplate.sheet.SheetCode;
import wallplate.solver.ExpectedDrawing;

/**
 * What came of one page of a scan: a sheet that was read, measured and marked, or a refusal.
 */
public sealed interface AssessedSheet {

    /** The scan file's own name, such as {@code sheet-07.pdf}. */
    String scan();

    /** The page within the file, from 1. */
    int page();

    ExpectedDrawing expected();

    record Read(
            String scan,
            int page,
            ExpectedDrawing expected,
            LevelPage levelPage,
            MeasuredSheet measured,
            MarkedSheet marked)
            implements AssessedSheet {}

    /**
     * @param code what the code printed on the sheet says
     * @param unscaled the level page in guessed millimetres, where both ticks of its bar would make it readable
     */
    record Unreadable(
            String scan,
            int page,
            ExpectedDrawing expected,
            String reason,
            Optional<SheetCode> code,
            Optional<LevelPage> unscaled)
            implements AssessedSheet {

        public Unreadable(String scan, int page, ExpectedDrawing expected, String reason) {
            this(scan, page, expected, reason, Optional.empty(), Optional.empty());
        }
    }
}
