package wallplate.measure;

import java.util.List;
import wallplate.geometry.Segment;

/**
 * One key of a sheet as it was found.
 *
 * @param key such as {@code rafter.depth}
 * @param evidence the strokes it was taken from, in page millimetres
 */
public record Measurement(String key, Finding finding, List<Segment> evidence) {

    public Measurement {
        evidence = List.copyOf(evidence);
    }

    public static Measurement of(String key, Finding finding, Segment... evidence) {
        return new Measurement(key, finding, List.of(evidence));
    }

    public static Measurement uncertain(String key, String reason) {
        return new Measurement(key, Finding.Uncertain.because(reason), List.of());
    }
}
