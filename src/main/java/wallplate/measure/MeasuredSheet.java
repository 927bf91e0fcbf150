package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/**
 * All that was measured on one sheet.
 *
 * @param measurements one for each key that the task asks for, in the order of the detail's list, and after them those of the
 *     line quality, which no task asks for
 * @param parts the lines found of each part, by part and edge such as {@code rafter.top}, in page millimetres
 * @param heel where the heel point lies on the page, where it was found
 */
public record MeasuredSheet(
        List<Measurement> measurements, Map<String, List<Segment>> parts, Optional<Point> heel) {

    /** Why nearly everything is left open where the sizes found are hardly any that the task or a slip explains. */
    public static final String NOT_UNDERSTOOD =
            "too few of the sizes agree with the task, so the drawing was not understood well enough";

    public MeasuredSheet {
        measurements = List.copyOf(measurements);
        parts = Map.copyOf(parts);
    }

    public Optional<Measurement> measurement(String key) {
        return measurements.stream().filter(measurement -> measurement.key().equals(key)).findFirst();
    }

    /** What was measured of the lines themselves, such as {@code line-quality.outline-breadth}, whatever they are lines of. */
    public List<Measurement> lineQuality() {
        return measurements.stream()
                .filter(measurement -> measurement.key().startsWith(LineMeasure.PREFIX))
                .toList();
    }

    /** This sheet with another measurement in the place of the one of the same key. */
    public MeasuredSheet with(Measurement other) {
        List<Measurement> replaced = measurements.stream()
                .map(measurement -> measurement.key().equals(other.key()) ? other : measurement)
                .toList();
        return new MeasuredSheet(replaced, parts, heel);
    }
}
