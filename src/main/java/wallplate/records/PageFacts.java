package wallplate.records;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Segment;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;

/** A level page without its picture: how large it is, how it was calibrated, what was noticed. */
public record PageFacts(
        int widthPx,
        int heightPx,
        double pixelsPerMm,
        double scanPixelsPerMm,
        double rotationDegrees,
        boolean photograph,
        Calibration calibration,
        Optional<Segment> bar,
        List<String> warnings) {

    public PageFacts {
        warnings = List.copyOf(warnings);
    }

    public static PageFacts of(LevelPage page) {
        return new PageFacts(
                page.ink().widthPx(),
                page.ink().heightPx(),
                page.ink().pixelsPerMm(),
                page.scanPixelsPerMm(),
                page.rotationDegrees(),
                page.photograph(),
                page.calibration(),
                page.bar(),
                page.warnings());
    }

    /** The same with one thing more that was noticed. */
    public PageFacts withWarning(String warning) {
        List<String> more = new ArrayList<>(warnings);
        more.add(warning);
        return new PageFacts(
                widthPx, heightPx, pixelsPerMm, scanPixelsPerMm, rotationDegrees, photograph, calibration, bar, more);
    }

    public double widthMm() {
        return widthPx / pixelsPerMm;
    }

    public double heightMm() {
        return heightPx / pixelsPerMm;
    }
}
