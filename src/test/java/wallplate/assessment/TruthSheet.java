package wallplate.assessment;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.samples.DrawnSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** A test sheet with the truth of what was drawn on it. */
record TruthSheet(String name, Path scan, ExpectedDrawing expected, JsonNode truth) {

    private static final Path SHEETS = Path.of("../shared/scans/dev");

    /** Every sheet that can be read; the test is left out where there are none. */
    static List<TruthSheet> readable() throws IOException {
        Assumptions.assumeTrue(Files.isDirectory(SHEETS), "no test sheets at " + SHEETS + ": this check is left out");
        List<TruthSheet> sheets = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SHEETS)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".json"))
                    .sorted()
                    .toList()) {
                JsonNode truth = JsonMapper.shared().readTree(Files.readString(file));
                if (truth.get("hopeless").isNull()) {
                    Path folder = file.getParent().getParent();
                    sheets.add(new TruthSheet(
                            folder.getFileName() + "/" + truth.get("file").asString(),
                            folder.resolve("scans").resolve(truth.get("file").asString()),
                            Solver.solve(task(folder.resolve("task.yml"))),
                            truth));
                }
            }
        }
        return sheets;
    }

    private static DrawingTask task(Path file) throws IOException {
        return task(Files.readString(file));
    }

    private static DrawingTask task(String yaml) {
        return ((TaskReading.Accepted) TaskFile.read(yaml)).task();
    }

    /** A sheet that was drawn and not captured. */
    static TruthSheet of(DrawnSheet drawn) {
        return new TruthSheet(
                drawn.name(),
                Path.of(drawn.name()),
                Solver.solve(task(drawn.taskYaml())),
                JsonMapper.shared().readTree(drawn.truth()));
    }

    /** What was really drawn, lengths as the sheet's own bar gives them. */
    MeasuredSheet drawn() {
        List<Measurement> measurements = new ArrayList<>();
        for (Expected value : expected.values()) {
            JsonNode drawn = truth.get("truth").get(value.key());
            if (drawn != null) {
                measurements.add(Measurement.of(value.key(), finding(value, drawn)));
            }
        }
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }

    private static Finding finding(Expected expected, JsonNode drawn) {
        if (drawn.get("state").asString().equals("absent")) {
            return new Finding.Absent();
        }
        JsonNode value = drawn.has("valueByBar") ? drawn.get("valueByBar") : drawn.get("value");
        if (expected instanceof Expected.Count) {
            return new Finding.Count(value.asInt());
        }
        if (value.isBoolean()) {
            return new Finding.YesNo(value.asBoolean());
        }
        return value.isString() ? new Finding.Word(value.asString()) : new Finding.Quantity(value.asDouble(), 0);
    }

    /** The slips that it was drawn with, by key and slip. */
    List<Map.Entry<String, String>> slips() {
        List<Map.Entry<String, String>> slips = new ArrayList<>();
        truth.get("slips")
                .forEach(slip -> slips.add(
                        Map.entry(slip.get("key").asString(), slip.get("slip").asString())));
        return slips;
    }
}
