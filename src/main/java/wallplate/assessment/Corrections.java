package wallplate.assessment;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/**
 * What a person corrected about the reading of a sheet. All places are millimetres of the level page as it was read, so
 * that one correction means the same with and without another.
 *
 * @param bar both ticks of the reference bar, where the millimetres were corrected
 * @param lines the lines chosen for keys, such as {@code fascia.depth}
 */
public record Corrections(Optional<Ticks> bar, SortedMap<String, List<Segment>> lines) {

    /**
     * Both ticks of the bar.
     *
     * @param left the one that should be on the left
     */
    public record Ticks(Point left, Point right) {}

    public Corrections {
        lines = Collections.unmodifiableSortedMap(new TreeMap<>(lines));
    }

    /** The sheet as it was read. */
    public static Corrections none() {
        return new Corrections(Optional.empty(), new TreeMap<>());
    }

    public boolean isNone() {
        return bar.isEmpty() && lines.isEmpty();
    }
}
