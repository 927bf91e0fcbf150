package wallplate.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import wallplate.samples.SampleScan;
import wallplate.samples.SampleSet;

/**
 * Measures whole sets of sheets and holds the figures against those that are kept in {@code accuracy/*.txt}.
 *
 * <p>Where a change makes them better, or worse for a reason that is worth it, write them anew in the same commit: {@code
 * mvn verify -Dit.test=AccuracyIT -Daccuracy.write=true}. The worst cases are shown in {@code target/accuracy}.
 */
class AccuracyIT {

    private static final Path SHARED = Path.of("../shared/scans/dev");
    private static final Path KEPT = Path.of("src/test/resources/accuracy");
    /** Chosen because its twelve sheets are of every kind: scans, photographs, a text page, a sheet that was cut off. */
    private static final long SEED = 17;
    private static final int GENERATED_SHEETS = 12;
    /**
     * Chosen by the kinds of its eight sheets, before any was measured: scans with the paper's edges and without, one upside
     * down, a fax, three photographs of which one lies sideways, and a scan that is too coarse to be read.
     */
    private static final long LEAN_TO_SEED = 29;

    private static final int LEAN_TO_SHEETS = 8;
    private static final int MOST_DPI = 300;

    private final MeasuringRun run = new MeasuringRun();

    @Test
    void sharedSheetsAreMeasuredAsWellAsBefore() throws IOException {
        assumeTrue(Files.isDirectory(SHARED), "the shared test sheets are not beside the project: " + SHARED);

        Scoring scoring = scored(sharedTruths().parallelStream().map(this::measureShared).toList());

        compare("shared", scoring);
    }

    @Test
    void generatedSheetsAreMeasuredAsWellAsBefore() throws IOException {
        compare("generated", generated(GENERATED_SHEETS, number -> SampleSet.scan(SEED, number, GENERATED_SHEETS, MOST_DPI)));
    }

    @Test
    void leanToSheetsAreMeasuredAsWellAsBefore() throws IOException {
        compare(
                "lean-to",
                generated(LEAN_TO_SHEETS, number -> SampleSet.leanToScan(LEAN_TO_SEED, number, LEAN_TO_SHEETS, MOST_DPI)));
    }

    private Scoring generated(int sheets, IntFunction<SampleScan> scans) {
        return scored(IntStream.range(0, sheets)
                .parallel()
                .mapToObj(scans)
                .map(this::measureGenerated)
                .toList());
    }

    private static Scoring scored(List<SheetResult> results) {
        Scoring scoring = new Scoring();
        results.forEach(scoring::add);
        return scoring;
    }

    private static List<Path> sharedTruths() throws IOException {
        try (Stream<Path> files = Files.walk(SHARED)) {
            return files.filter(file -> file.getParent().endsWith("truth")).sorted().toList();
        }
    }

    private SheetResult measureShared(Path truthFile) {
        try {
            String name = truthFile.getFileName().toString().replace(".json", "");
            TruthSheet truth = TruthSheet.of(name, Files.readString(truthFile));
            Path taskFolder = truthFile.getParent().getParent();
            Path scan = scanOf(taskFolder.resolve("scans"), name);
            String task = Files.readString(taskFolder.resolve("task.yml"));
            return run.measure(truth, scan.getFileName().toString(), Files.readAllBytes(scan), MeasuringRun.expected(task));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path scanOf(Path scans, String name) throws IOException {
        try (Stream<Path> files = Files.list(scans)) {
            return files.filter(file -> file.getFileName().toString().startsWith(name + ".")).findFirst().orElseThrow();
        }
    }

    private SheetResult measureGenerated(SampleScan scan) {
        TruthSheet truth = TruthSheet.of(scan.name(), scan.truth());
        return run.measure(truth, scan.file(), scan.content(), MeasuringRun.expected(scan.taskYaml()));
    }

    private static void compare(String set, Scoring scoring) throws IOException {
        AccuracyTable table = AccuracyTable.of(scoring);
        new WorstCases(Path.of("target/accuracy", set)).write("Worst cases, " + set + " sheets", table, scoring.worst(10));
        Path kept = KEPT.resolve(set + ".txt");
        if (Boolean.getBoolean("accuracy.write")) {
            Files.createDirectories(KEPT);
            Files.writeString(kept, table.text());
        }
        assertThat(table.worseThan(AccuracyTable.parse(Files.readString(kept))))
                .as("figures of the %s sheets against %s; all of them:%n%s", set, kept, table.text())
                .isEmpty();
    }
}
