package wallplate.measure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;
import wallplate.sheet.SheetReader;
import wallplate.sheet.SheetReading;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * Fits the weights of every choice anew to sets of sheets with their truth and prints them as {@code weights.properties}
 * keeps them: {@code FitWeights SET...}, each SET a folder of task folders with {@code task.yml}, {@code scans} and {@code
 * truth}. After each choice it says on how many sheets of the half that was not fitted the likeliest reading was right.
 */
final class FitWeights {

    private final Map<String, List<ChoiceExamples.Named>> examples = new TreeMap<>();
    private final SheetReader reader = new SheetReader();

    private FitWeights() {}

    public static void main(String[] sets) throws IOException {
        FitWeights fit = new FitWeights();
        for (String set : sets) {
            for (Path task : listed(Path.of(set))) {
                fit.readTask(task);
            }
        }
        fit.examples.values().forEach(FitWeights::print);
    }

    private static List<Path> listed(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.sorted().toList();
        }
    }

    private void readTask(Path folder) throws IOException {
        TaskReading task = TaskFile.read(Files.readString(folder.resolve("task.yml")));
        ExpectedDrawing expected = Solver.solve(((TaskReading.Accepted) task).task());
        for (Path scan : listed(folder.resolve("scans"))) {
            List<Integer> pages = new ArrayList<>();
            ScanFile.forEachPage(scan, page -> pages.add(page.page()));
            ScanFile.forEachPage(scan, page -> readPage(folder, page, pages.size() > 1, expected));
        }
    }

    private void readPage(Path folder, ScanPage page, boolean isOneOfSeveral, ExpectedDrawing expected) {
        String name = page.scan().substring(0, page.scan().lastIndexOf('.'));
        Path file = folder.resolve("truth").resolve(name + (isOneOfSeveral ? "-p" + page.page() : "") + ".json");
        SheetReading reading = reader.read(page, expected.task().sheet());
        if (reading instanceof SheetReading.Readable readable) {
            JsonNode sheet = truth(file);
            if (!sheet.hasNonNull("hopeless")) {
                ChoiceExamples seen = new ChoiceExamples(key -> trueSize(sheet, key, readable.page()));
                new Measurer().measure(readable.page(), expected, seen);
                seen.examples().forEach(example -> examples
                        .computeIfAbsent(example.weights().name(), any -> new ArrayList<>())
                        .add(example));
            }
        }
    }

    private static JsonNode truth(Path file) {
        try {
            return JsonMapper.shared().readTree(Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException("no truth for " + file, unreadable);
        }
    }

    private static Optional<Double> trueSize(JsonNode sheet, String key, LevelPage page) {
        JsonNode size = sheet.get("truth").get(key);
        if (size == null || size.get("state").asString().equals("absent") || !size.get("value").isNumber()) {
            return Optional.empty();
        }
        boolean isByBar = page.calibration().source() == Calibration.Source.REFERENCE_BAR && size.has("valueByBar");
        return Optional.of(size.get(isByBar ? "valueByBar" : "value").asDouble());
    }

    private static void print(List<ChoiceExamples.Named> examples) {
        Weights kept = examples.get(0).weights();
        boolean mayBeNone = Double.isFinite(kept.noneOffered());
        List<ChoiceFit.Example> all = new ArrayList<>(examples.stream()
                .map(ChoiceExamples.Named::example)
                .map(example -> mayBeNone ? example.orNone() : example)
                .toList());
        List<String> traits = new ArrayList<>(kept.traits());
        if (mayBeNone) {
            traits.add(Weights.NONE_OFFERED);
        }
        double[] weights = ChoiceFit.fit(all, traits.size());
        for (int trait = 0; trait < weights.length; trait++) {
            System.out.printf(Locale.ROOT, "%s.%s=%.2f%n", kept.name(), traits.get(trait), weights[trait]);
        }
        Collections.shuffle(all, new java.util.Random(1));
        List<ChoiceFit.Example> half = all.subList(0, all.size() / 2);
        List<ChoiceFit.Example> others = all.subList(all.size() / 2, all.size());
        double[] ofHalf = ChoiceFit.fit(half, weights.length);
        long right = others.stream().filter(example -> ChoiceFit.isRightAtBest(example, ofHalf)).count();
        System.out.printf("# %s: right on %d of %d sheets that were not fitted%n", kept.name(), right, others.size());
    }
}
