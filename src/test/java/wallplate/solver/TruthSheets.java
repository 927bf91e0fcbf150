package wallplate.solver;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Sheets with the truth of what was drawn on them; a test that uses them is left out where they are not there. */
final class TruthSheets {

    private static final Path SHEETS = Path.of("../shared/scans/dev");

    private TruthSheets() {}

    static Segment segment(JsonNode line) {
        return Segment.between(
                line.get(0).asDouble(),
                line.get(1).asDouble(),
                line.get(2).asDouble(),
                line.get(3).asDouble());
    }

    record Sheet(String name, DrawingTask task, JsonNode truth) {

        /** The sheet's lines turned level, mirrored where needed, with the origin at the plate's top outer corner. */
        Segment inDetailAxes(Segment onSheet) {
            Segment plateTop = segment(truth.get("lines").get("wall-plate.top"));
            Segment plateOuter = segment(truth.get("lines").get("wall-plate.outer"));
            Segment level = segment(truth.get("lines").get("ceiling.top"));
            Point heel = plateTop.line().intersection(plateOuter.line(), 1e-6).orElseThrow();
            double tilt = level.inclinationDegrees();
            return new Segment(turned(onSheet.start(), heel, tilt), turned(onSheet.end(), heel, tilt));
        }

        private Point turned(Point point, Point heel, double tilt) {
            Vector level = point.minus(heel).rotatedDegrees(-tilt);
            Vector faced = task.eaves() == EavesSide.RIGHT ? level.mirrored() : level;
            return Point.ORIGIN.plus(faced);
        }
    }

    static List<Sheet> readable() throws IOException {
        Assumptions.assumeTrue(Files.isDirectory(SHEETS), "no test sheets at " + SHEETS + ": this check is left out");
        List<Sheet> sheets = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SHEETS)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".json"))
                    .sorted()
                    .toList()) {
                JsonNode truth = JsonMapper.shared().readTree(Files.readString(file));
                if (truth.get("hopeless").isNull()) {
                    Path task = file.getParent().getParent().resolve("task.yml");
                    TaskReading reading = TaskFile.read(Files.readString(task));
                    sheets.add(new Sheet(file.toString(), ((TaskReading.Accepted) reading).task(), truth));
                }
            }
        }
        return sheets;
    }
}
