package wallplate.benchmark;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import wallplate.drafting.ConstructionGuide;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.ModelAnswer;
import wallplate.drafting.SheetOwner;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

/**
 * Promised: solving a task and drawing its SVG in less than 5 ms when warm; 200 printed sheets as one PDF in less than
 * 10 s with a heap of 512 MB, which the fork is given.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgsAppend = "-Xmx512m")
public class DraftingBenchmark {

    private final DrawingTask task = Tasks.boathouse();

    private final List<SheetOwner> learners = IntStream.rangeClosed(1, 200)
            .mapToObj(number -> new SheetOwner(
                    String.format(Locale.ROOT, "L%03d", number), "Learner " + number, "11 B", "25 November", 1))
            .toList();

    @Benchmark
    public String solveAndDrawSvg() {
        return ModelAnswer.of(Solver.solve(task)).svg();
    }

    @Benchmark
    public Object solve() {
        return Solver.solve(task);
    }

    @Benchmark
    public byte[] modelAnswerPdf() {
        return ModelAnswer.of(Solver.solve(task)).pdf();
    }

    @Benchmark
    public Object constructionGuide() {
        return ConstructionGuide.of(task).steps();
    }

    @Benchmark
    public byte[] twoHundredSheets() {
        return DrawingSheets.of(task).withBrief(true).pdf(learners);
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(DraftingBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
