package wallplate.report.pdf;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Segment;
import wallplate.report.ModelOnSheet;

/** Between which two lines of the model answer a size is dimensioned; sizes not square to their lines are left out. */
final class DimensionedEdges {

    private static final Map<String, List<String>> EDGES = Map.ofEntries(
            Map.entry("wall.thickness", List.of("wall.outer", "wall.inner")),
            Map.entry("wall-plate.width", List.of("wall-plate.outer", "wall-plate.inner")),
            Map.entry("wall-plate.depth", List.of("wall-plate.top", "wall.top")),
            Map.entry("tie-beam.depth", List.of("tie-beam.bottom", "tie-beam.top")),
            Map.entry("rafter.depth", List.of("rafter.bottom", "rafter.top")),
            Map.entry("rafter.overhang", List.of("rafter.cut", "wall.outer")),
            Map.entry("support.depth", List.of("rafter.top", "covering.bottom")),
            Map.entry("support.width", List.of("support.low", "support.high")),
            Map.entry("covering.thickness", List.of("covering.bottom", "covering.top")),
            Map.entry("covering.gap", List.of("rafter.top", "covering.bottom")),
            Map.entry("fascia.thickness", List.of("fascia.inner", "fascia.outer")),
            Map.entry("fascia.depth", List.of("fascia.bottom", "fascia.top")),
            Map.entry("gutter.width", List.of("gutter.outer", "gutter.inner")),
            Map.entry("barge-board.clearance", List.of("gutter.outer", "barge-board.end")),
            Map.entry("ceiling.drop", List.of("tie-beam.bottom", "ceiling.top")),
            Map.entry("brander.width", List.of("brander.low", "brander.high")),
            Map.entry("brander.depth", List.of("tie-beam.bottom", "ceiling.top")),
            Map.entry("post.width", List.of("post.outer", "post.inner")));

    private DimensionedEdges() {}

    static boolean has(String key) {
        return EDGES.containsKey(key);
    }

    /** Both lines on the learner's page; empty where the model answer lacks one, or the key has none. */
    static Optional<List<Segment>> onSheet(ModelOnSheet model, String key) {
        List<Segment> lines = EDGES.getOrDefault(key, List.of()).stream()
                .flatMap(edge -> model.first(edge).stream())
                .toList();
        return lines.size() == 2 ? Optional.of(lines) : Optional.empty();
    }
}
