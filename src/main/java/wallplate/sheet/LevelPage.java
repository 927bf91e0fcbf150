package wallplate.sheet;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Segment;

/**
 * A sheet made level, upright and true to size: one millimetre of the page is one millimetre on the learner's paper.
 *
 * @param ink the page's ink
 * @param toScan from page millimetres (x right, y up, origin lower left of the ink image) to pixels of the page as it
 *     was handed in (x right, y down, whole numbers at pixel corners)
 * @param scanPixelsPerMm the mean resolution of the page as it was handed in
 * @param rotationDegrees how far the drawing's level lines were turned in the upright picture, anticlockwise
 * @param photograph whether the page was seen by a camera rather than by a scanner
 * @param bar the reference bar as it was found, on the page
 * @param warnings sentences for the teacher and the learner
 * @param code whose sheet it is, where the code of a printed sheet says so
 * @param cutOff whether a part of the sheet lies outside the picture, so that nothing on it can be called absent
 */
public record LevelPage(
        InkImage ink,
        PlaneMap toScan,
        double scanPixelsPerMm,
        double rotationDegrees,
        boolean photograph,
        Calibration calibration,
        Optional<Segment> bar,
        List<String> warnings,
        Optional<SheetCode> code,
        boolean cutOff) {

    public LevelPage {
        warnings = List.copyOf(warnings);
    }

    /** The same page with other warnings. */
    public LevelPage withWarnings(List<String> others) {
        return new LevelPage(
                ink, toScan, scanPixelsPerMm, rotationDegrees, photograph, calibration, bar, others, code, cutOff);
    }

    /** A page of a whole sheet. */
    public LevelPage(
            InkImage ink,
            PlaneMap toScan,
            double scanPixelsPerMm,
            double rotationDegrees,
            boolean photograph,
            Calibration calibration,
            Optional<Segment> bar,
            List<String> warnings,
            Optional<SheetCode> code) {
        this(ink, toScan, scanPixelsPerMm, rotationDegrees, photograph, calibration, bar, warnings, code, false);
    }

    /** A page without a code. */
    public LevelPage(
            InkImage ink,
            PlaneMap toScan,
            double scanPixelsPerMm,
            double rotationDegrees,
            boolean photograph,
            Calibration calibration,
            Optional<Segment> bar,
            List<String> warnings) {
        this(ink, toScan, scanPixelsPerMm, rotationDegrees, photograph, calibration, bar, warnings, Optional.empty());
    }
}
