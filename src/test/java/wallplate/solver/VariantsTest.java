package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

class VariantsTest {

    private static final DrawingTask TASK = Tasks.boathouse();

    private static List<DrawingTask> twenty(long seed) {
        return Variants.of(TASK, Variants.usualRanges(TASK), seed, 20);
    }

    @Test
    void givesTheSameVariantsForTheSameSeed() {
        assertThat(twenty(7)).isEqualTo(twenty(7)).isNotEqualTo(twenty(8));
    }

    @Test
    void givesAsManyDifferentVariantsAsAsked() {
        List<DrawingTask> variants = twenty(7);
        assertThat(variants).hasSize(20);
        assertThat(new HashSet<>(variants.stream().map(DrawingTask::sizes).toList()))
                .hasSize(20);
        assertThat(variants).extracting(DrawingTask::id).doesNotHaveDuplicates().contains("boathouse-eaves-v1");
    }

    @Test
    void asksForTheSameKeysWithoutNewAdvice() {
        List<String> keys =
                Solver.solve(TASK).values().stream().map(Expected::key).toList();
        assertThat(twenty(7)).allSatisfy(variant -> {
            assertThat(Solver.solve(variant).values()).extracting(Expected::key).containsExactlyElementsOf(keys);
            assertThat(BriefCheck.check(variant)).isEmpty();
        });
    }

    @Test
    void dividesAsEasilyAsTheFirstTask() {
        assertThat(twenty(7)).allSatisfy(variant -> Solver.solve(TASK).values().forEach(value -> {
            if (value instanceof Expected.Length before && before.key().contains("spacing")) {
                Expected.Length after = (Expected.Length)
                        Solver.solve(variant).value(before.key()).orElseThrow();
                assertThat(after.exactMm()).as(before.key()).isEqualTo(Math.rint(after.exactMm()));
            }
        }));
    }

    @Test
    void staysWithinStatedRanges() {
        List<VariantRange> ranges = List.of(new VariantRange("pitch", 20, 30, 5));
        List<DrawingTask> variants = Variants.of(TASK, ranges, 1, 5);
        assertThat(variants)
                .extracting(variant -> variant.sizes().number("pitch"))
                .containsExactlyInAnyOrder(20.0, 25.0, 30.0);
    }
}
