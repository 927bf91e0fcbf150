package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.task.Tasks;

/** What holds for every detail. */
class DetailsTest {

    static Stream<DrawingTask> oneTaskOfEachDetail() {
        return Stream.of(Tasks.boathouse(), Tasks.accepted(Tasks.LEAN_TO));
    }

    @ParameterizedTest
    @MethodSource("oneTaskOfEachDetail")
    void solvesEveryDetailThatTasksMayName(DrawingTask task) {
        assertThat(Details.all()).extracting("id").contains(task.detail()).hasSize(2);
        ExpectedDrawing drawing = Solver.solve(task);
        assertThat(drawing.lines()).isNotEmpty();
        assertThat(drawing.values())
                .extracting(Expected::key)
                .startsWith("roof.pitch")
                .endsWith("drawing.eaves")
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @MethodSource("oneTaskOfEachDetail")
    void describesEveryKeyThatItAsksFor(DrawingTask task) {
        List<String> described =
                Solver.keys(task).stream().map(MeasuredKey::key).toList();
        assertThat(Solver.solve(task).values()).extracting(Expected::key).isSubsetOf(described);
        assertThat(Solver.keys(task)).allSatisfy(key -> {
            assertThat(described).containsAll(key.followsFrom());
            key.sizeKey()
                    .ifPresent(size -> assertThat(Details.of(task).key(size)).isPresent());
            assertThat(key.labelFor(task)).isNotBlank().doesNotContain("{");
        });
    }

    @ParameterizedTest
    @MethodSource("oneTaskOfEachDetail")
    void linesInEveryLineOnceInItsConstruction(DrawingTask task) {
        assertThat(Solver.construction(task).stream().flatMap(step -> step.linedIn().stream()))
                .containsExactlyInAnyOrderElementsOf(Solver.solve(task).lines());
    }

    @ParameterizedTest
    @MethodSource("oneTaskOfEachDetail")
    void writesAndReadsItsTasksWithoutLoss(DrawingTask task) {
        assertThat(TaskFile.read(TaskFile.write(task))).isEqualTo(new TaskReading.Accepted(task));
    }

    @ParameterizedTest
    @MethodSource("oneTaskOfEachDetail")
    void drawsVariantsAndDerivesValues(DrawingTask task) {
        assertThat(Variants.of(task, Variants.usualRanges(task), 3, 5)).hasSize(5);
        assertThat(Solver.derived(task))
                .extracting(DerivedValue::id)
                .contains("roof.run", "roof.rise", "rafter.length", "covering.length", "roof.slope-percent")
                .doesNotHaveDuplicates();
    }
}
