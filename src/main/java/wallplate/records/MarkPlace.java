package wallplate.records;

import java.util.List;
import wallplate.geometry.Segment;

/**
 * Where on its sheet a criterion was measured.
 *
 * @param pixelsPerMm of the level page
 * @param evidence the strokes measured, in millimetres of the page, y up; never empty
 */
public record MarkPlace(
        long sheetId, double pageWidthMm, double pageHeightMm, double pixelsPerMm, List<Segment> evidence) {

    public MarkPlace {
        evidence = List.copyOf(evidence);
    }
}
