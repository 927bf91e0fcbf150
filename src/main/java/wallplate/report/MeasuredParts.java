package wallplate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import wallplate.geometry.Segment;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/**
 * The measured parts of a sheet with their lines on its level page, in the order of the detail's own list: a part's place
 * is its number, on paper and on pages alike.
 */
public final class MeasuredParts {

    /** What explains a part and is not measured. */
    private static final Set<String> FILLING = Set.of("hatch", "cross1", "cross2");

    /** What keys of the whole drawing begin with; their strokes are those of other parts. */
    private static final Set<String> OF_THE_WHOLE = Set.of("roof", "drawing", "line-quality");

    private MeasuredParts() {}

    /** Every part of which lines were found; one without lines of its own has the strokes that its values were taken from. */
    public static Map<String, List<Segment>> of(MeasuredSheet measured) {
        Map<String, List<Segment>> byPart = new LinkedHashMap<>();
        for (Measurement measurement : measured.measurements()) {
            byPart.computeIfAbsent(Topic.partOf(measurement.key()), part -> new ArrayList<>());
        }
        new TreeMap<>(measured.parts()).forEach((partAndEdge, lines) -> {
            String edge = partAndEdge.substring(partAndEdge.lastIndexOf('.') + 1);
            if (!FILLING.contains(edge) && !partAndEdge.equals("break")) {
                String part = Topic.partOf(partAndEdge).replaceAll("\\d+$", "");
                byPart.computeIfAbsent(part, none -> new ArrayList<>()).addAll(lines);
            }
        });
        byPart.forEach((part, lines) -> {
            if (lines.isEmpty() && !OF_THE_WHOLE.contains(part)) {
                lines.addAll(evidence(measured, part));
            }
        });
        byPart.values().removeIf(List::isEmpty);
        return byPart;
    }

    private static Set<Segment> evidence(MeasuredSheet measured, String part) {
        Set<Segment> strokes = new LinkedHashSet<>();
        measured.measurements().stream()
                .filter(measurement -> Topic.partOf(measurement.key()).equals(part))
                .forEach(measurement -> strokes.addAll(measurement.evidence()));
        return strokes;
    }
}
