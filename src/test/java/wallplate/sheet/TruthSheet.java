package wallplate.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.task.SheetFormat;

/** A test sheet together with the truth of how it was drawn and captured. */
record TruthSheet(Path scan, JsonNode truth, SheetFormat format) {

    private static final Set<String> LONG_LEVEL =
            Set.of("tie-beam.bottom", "tie-beam.top", "ceiling.top", "ceiling.bottom");

    /** Every sheet of a folder {@code TASK/scans} with {@code TASK/truth} and {@code TASK/task.yml}, by name. */
    static List<TruthSheet> under(Path folder) throws IOException {
        List<TruthSheet> sheets = new ArrayList<>();
        try (Stream<Path> tasks = Files.list(folder)) {
            for (Path task : tasks.filter(path -> Files.exists(path.resolve("task.yml")))
                    .sorted()
                    .toList()) {
                SheetFormat format = format(Files.readString(task.resolve("task.yml")));
                try (Stream<Path> scans = Files.list(task.resolve("scans"))) {
                    scans.sorted().forEach(scan -> read(task, scan, format).ifPresent(sheets::add));
                }
            }
        }
        return sheets;
    }

    private static Optional<TruthSheet> read(Path task, Path scan, SheetFormat format) {
        String name = scan.getFileName().toString();
        Path truth = task.resolve("truth").resolve(name.substring(0, name.lastIndexOf('.')) + ".json");
        if (!Files.exists(truth)) {
            return Optional.empty();
        }
        try {
            return Optional.of(new TruthSheet(scan, new ObjectMapper().readTree(Files.readString(truth)), format));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SheetFormat format(String task) {
        String size = value(task, "size", "A4");
        double bar = Double.parseDouble(value(task, "reference-bar", "100"));
        double longer =
                switch (size) {
                    case "A3" -> 420;
                    case "A4" -> 297;
                    case "A2" -> 594;
                    default -> throw new IllegalArgumentException("sheet size " + size);
                };
        double shorter =
                switch (size) {
                    case "A3" -> 297;
                    case "A4" -> 210;
                    default -> 420;
                };
        boolean portrait = value(task, "orientation", "landscape").equals("portrait");
        return portrait
                ? new SheetFormat(size, shorter, longer, bar)
                : new SheetFormat(size, longer, shorter, bar);
    }

    private static String value(String task, String key, String otherwise) {
        var matcher = java.util.regex.Pattern.compile(key + ":\\s*([A-Za-z0-9.]+)").matcher(task);
        return matcher.find() ? matcher.group(1) : otherwise;
    }

    String name() {
        return scan.getFileName().toString();
    }

    boolean hopeless() {
        return !truth.path("hopeless").isNull() && !truth.path("hopeless").isMissingNode();
    }

    String hopelessKind() {
        return truth.path("hopeless").asString();
    }

    boolean photograph() {
        return truth.path("condition").path("kind").asString().equals("photo");
    }

    double tiltDegrees() {
        return truth.path("condition").path("tilt-of-drawing").asDouble();
    }

    boolean hasBar() {
        return truth.path("bar").path("present").asBoolean();
    }

    double barTrueMm() {
        return truth.path("bar").path("trueMm").asDouble();
    }

    Segment bar() {
        return segment(truth.path("bar").path("line"));
    }

    /** From millimetres on the sheet as drawn to pixels of the page as handed in. */
    Point toPixels(Point sheet) {
        JsonNode map = truth.path("toPixels");
        if (map.has("affine")) {
            JsonNode a = map.path("affine");
            return new Point(
                    number(a, 0, 0) * sheet.x() + number(a, 0, 1) * sheet.y() + number(a, 0, 2),
                    number(a, 1, 0) * sheet.x() + number(a, 1, 1) * sheet.y() + number(a, 1, 2));
        }
        JsonNode h = map.path("homography");
        double w = number(h, 2, 0) * sheet.x() + number(h, 2, 1) * sheet.y() + number(h, 2, 2);
        double x = (number(h, 0, 0) * sheet.x() + number(h, 0, 1) * sheet.y() + number(h, 0, 2)) / w;
        double y = (number(h, 1, 0) * sheet.x() + number(h, 1, 1) * sheet.y() + number(h, 1, 2)) / w;
        JsonNode radial = map.path("radial");
        double cx = radial.path("cx").asDouble();
        double cy = radial.path("cy").asDouble();
        double rc = radial.path("rc").asDouble();
        double factor = 1 + radial.path("k1").asDouble() * ((x - cx) * (x - cx) + (y - cy) * (y - cy)) / (rc * rc);
        return new Point(cx + (x - cx) * factor, cy + (y - cy) * factor);
    }

    private static double number(JsonNode matrix, int row, int column) {
        return matrix.get(row).get(column).asDouble();
    }

    /** All lines of the drawing in millimetres on the sheet. */
    List<Segment> lines() {
        return lines(name -> true);
    }

    /** The lines drawn along T-square and set square, with the bar's: no diagonals and no hatching. */
    List<Segment> straightLines() {
        List<Segment> lines = lines(name -> !name.contains("cross") && !name.contains("hatch"));
        if (hasBar()) {
            lines.add(bar());
        }
        return lines;
    }

    /** The mean direction of the long level lines as drawn, weighted with their lengths; empty where none was drawn. */
    OptionalDouble longLevelDegrees() {
        List<Segment> level = lines(LONG_LEVEL::contains);
        double length = level.stream().mapToDouble(Segment::length).sum();
        return length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(level.stream()
                                .mapToDouble(line -> line.inclinationDegrees() * line.length())
                                .sum()
                        / length);
    }

    private List<Segment> lines(Predicate<String> wanted) {
        List<Segment> lines = new ArrayList<>();
        truth.path("lines").properties().forEach(entry -> {
            if (wanted.test(entry.getKey()) && entry.getValue().size() == 4 && entry.getValue().get(0).isNumber()) {
                lines.add(segment(entry.getValue()));
            }
        });
        return lines;
    }

    private static Segment segment(JsonNode line) {
        return Segment.between(
                line.get(0).asDouble(), line.get(1).asDouble(), line.get(2).asDouble(), line.get(3).asDouble());
    }
}
