package wallplate.report;

import java.util.Optional;
import wallplate.measure.MeasuredSheet;

/**
 * A result file read back, for marking it again without its scan.
 *
 * @param task the task's id
 * @param measured what was measured, without the strokes it was taken from; empty where the sheet could not be read
 * @param guideline the version of the guideline that its marks were given under; empty where it has none
 */
public record StoredResult(
        String task, String scan, int page, Optional<MeasuredSheet> measured, Optional<String> guideline) {}
