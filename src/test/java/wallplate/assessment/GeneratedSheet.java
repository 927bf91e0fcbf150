package wallplate.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.samples.SampleScan;
import wallplate.samples.SampleSet;
import wallplate.sheet.Calibration;
import wallplate.sheet.ScanFile;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** A generated sheet as the program read it, with what is known of every line that was drawn on it. */
record GeneratedSheet(String name, AssessedSheet.Read read, JsonNode truth) {

    /** Which lines of the truth a key is measured between. */
    static final Map<String, List<String>> LINES = Map.ofEntries(
            Map.entry("wall.thickness", List.of("wall.outer", "wall.inner")),
            Map.entry("wall-plate.width", List.of("wall-plate.outer", "wall-plate.inner")),
            Map.entry("wall-plate.depth", List.of("wall-plate.top", "wall.top")),
            Map.entry("tie-beam.depth", List.of("tie-beam.bottom", "tie-beam.top")),
            Map.entry("rafter.depth", List.of("rafter.bottom", "rafter.top")),
            Map.entry("roof.pitch", List.of("rafter.bottom", "rafter.top")),
            Map.entry("covering.thickness", List.of("covering.bottom", "covering.top")),
            Map.entry("covering.gap", List.of("rafter.top", "covering.bottom")),
            Map.entry("fascia.thickness", List.of("fascia.outer", "fascia.inner")),
            Map.entry("fascia.depth", List.of("fascia.bottom", "fascia.top")),
            Map.entry("gutter.depth", List.of("gutter.bottom", "gutter.outer")),
            Map.entry("ceiling.drop", List.of("tie-beam.bottom", "ceiling.top")),
            Map.entry("brander.width", List.of("brander0.low", "brander0.high")),
            Map.entry("support.width", List.of("support0.low", "support0.high")),
            Map.entry("post.width", List.of("post.outer", "post.inner")),
            Map.entry("rafter.heel-offset", List.of("wall-plate.top", "wall-plate.outer", "rafter.bottom")),
            Map.entry("covering.projection", List.of("rafter.top", "fascia.inner", "covering.end")),
            Map.entry("post.position", List.of("wall.outer", "wall.inner", "post.outer", "post.inner")));

    /** The lines of a key as this sheet's task has it. */
    List<String> linesOf(String key) {
        boolean fromFace =
                read.expected().task().sizes().word("posts.set-out-from").filter("outer-face"::equals).isPresent();
        return LINES.get(key).stream()
                .filter(name -> !(key.equals("post.position") && fromFace && name.equals("wall.inner")))
                .toList();
    }

    /** The first sheets of a seed that have a bar, can be read and were calibrated by their bar. */
    static List<GeneratedSheet> first(long seed, int wanted) {
        return IntStream.range(0, 60)
                .mapToObj(number -> SampleSet.scan(seed, number, 4, 300))
                .map(GeneratedSheet::of)
                .flatMap(Optional::stream)
                .limit(wanted)
                .toList();
    }

    private static Optional<GeneratedSheet> of(SampleScan scan) {
        JsonNode truth = JsonMapper.shared().readTree(scan.truth());
        if (!truth.get("hopeless").isNull() || !truth.get("bar").get("present").asBoolean()) {
            return Optional.empty();
        }
        DrawingTask task = ((TaskReading.Accepted) TaskFile.read(scan.taskYaml())).task();
        List<AssessedSheet> assessed = new ArrayList<>();
        ScanFile.forEachPage(scan.file(), scan.content(), page -> assessed.add(new Assessor().assess(page, task)));
        return assessed.get(0) instanceof AssessedSheet.Read read
                        && read.levelPage().calibration().source() == Calibration.Source.REFERENCE_BAR
                ? Optional.of(new GeneratedSheet(scan.name(), read, truth))
                : Optional.empty();
    }

    /** Both ends of the bar as drawn, on the level page, the one that is on the left first. */
    Segment bar() {
        Segment drawn = onPage(truth.get("bar").get("line"));
        return drawn.start().x() < drawn.end().x() ? drawn : drawn.reversed();
    }

    /** A line as drawn, on the level page; empty where it was not drawn. */
    Optional<Segment> line(String name) {
        return Optional.ofNullable(truth.get("lines").get(name)).map(this::onPage);
    }

    /** A length as the sheet's own bar gives it, or the pitch; empty where the key was not drawn or is no number. */
    OptionalDouble value(String key) {
        JsonNode node = truth.get("truth").get(key);
        if (node == null || !node.has("value") || !node.get("value").isNumber()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(node.get(node.has("valueByBar") ? "valueByBar" : "value").asDouble());
    }

    private Segment onPage(JsonNode ends) {
        return Segment.between(
                onPage(new Point(ends.get(0).asDouble(), ends.get(1).asDouble())),
                onPage(new Point(ends.get(2).asDouble(), ends.get(3).asDouble())));
    }

    private Point onPage(Point onPaper) {
        return read.levelPage().toScan().inverse().apply(inPixels(onPaper));
    }

    private Point inPixels(Point place) {
        JsonNode map = truth.get("toPixels");
        if (map.has("affine")) {
            return new Point(row(map.get("affine").get(0), place), row(map.get("affine").get(1), place));
        }
        JsonNode rows = map.get("homography");
        double depth = row(rows.get(2), place);
        Point flat = new Point(row(rows.get(0), place) / depth, row(rows.get(1), place) / depth);
        JsonNode radial = map.get("radial");
        Point centre = new Point(radial.get("cx").asDouble(), radial.get("cy").asDouble());
        double reach = flat.distanceTo(centre) / radial.get("rc").asDouble();
        return centre.plus(flat.minus(centre).times(1 + radial.get("k1").asDouble() * reach * reach));
    }

    private static double row(JsonNode row, Point place) {
        return row.get(0).asDouble() * place.x() + row.get(1).asDouble() * place.y() + row.get(2).asDouble();
    }
}
