package wallplate.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Asked;
import wallplate.marking.Guideline;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.report.DrawnPages;
import wallplate.report.FeedbackReport;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/**
 * How long it takes, warm, to mark a class again and to write one learner's report.
 *
 * <p>Promised: 40 sheets marked again in under a second, a feedback report in under 300 milliseconds. Run by its main
 * method, with the test class path.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@org.openjdk.jmh.annotations.Measurement(iterations = 5, time = 2)
@Fork(1)
public class MarkingBenchmark {

    private static final int CLASS_SIZE = 40;
    private static final double ERROR_MM = 1.5;

    private final ExpectedDrawing expected = Solver.solve(Asked.boathouse());
    private final Guideline guideline = Guideline.defaultFor(expected);
    private final List<MeasuredSheet> sheets = sheets(new Random(40));
    private final AssessedSheet report = DrawnPages.sheet(
            "sheet-07.png",
            expected,
            Map.of(
                    "support.spacing", new Finding.Quantity(50.1, 0.05),
                    "gutter.width", new Finding.Absent(),
                    "post.position", new Finding.Quantity(70.2, 0.05)));

    @Benchmark
    public List<MarkedSheet> markAgain() {
        return sheets.stream()
                .map(sheet -> new Marker().mark(guideline, expected, sheet))
                .toList();
    }

    @Benchmark
    public int writeReport() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new FeedbackReport().write(report, out);
        return out.size();
    }

    private List<MeasuredSheet> sheets(Random random) {
        List<MeasuredSheet> drawn = new ArrayList<>();
        for (int sheet = 0; sheet < CLASS_SIZE; sheet++) {
            List<Measurement> measurements = expected.values().stream()
                    .map(value -> Measurement.of(value.key(), drawn(value, random)))
                    .toList();
            drawn.add(new MeasuredSheet(measurements, Map.of(), Optional.empty()));
        }
        return drawn;
    }

    private static Finding drawn(Expected value, Random random) {
        if (value instanceof Expected.Length length) {
            return new Finding.Quantity(length.exactMm() + random.nextGaussian() * ERROR_MM, 0.05);
        }
        if (value instanceof Expected.Angle angle) {
            return new Finding.Quantity(angle.degrees() + random.nextGaussian(), 0.05);
        }
        if (value instanceof Expected.Count count) {
            return new Finding.Count(count.number() + random.nextInt(2));
        }
        return value instanceof Expected.Word word
                ? new Finding.Word(word.word())
                : new Finding.YesNo(random.nextBoolean());
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(MarkingBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
