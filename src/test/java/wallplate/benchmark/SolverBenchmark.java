package wallplate.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
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
import wallplate.solver.ConstructionStep;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.task.Tasks;

/**
 * How long one task takes, warm: read, solved with all its slips, and told step by step.
 *
 * <p>Run by its main method, with the test class path.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SolverBenchmark {

    private final DrawingTask task = Tasks.boathouse();

    @Benchmark
    public TaskReading read() {
        return TaskFile.read(Tasks.BOATHOUSE);
    }

    @Benchmark
    public ExpectedDrawing solve() {
        return Solver.solve(task);
    }

    @Benchmark
    public List<ConstructionStep> construction() {
        return Solver.construction(task);
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(SolverBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
