package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.sheet.SheetCode;
import wallplate.task.DrawingTask;
import wallplate.task.Sizes;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.task.Tasks;

class FollowUpTaskTest {

    private static final DrawingTask TASK = Tasks.boathouse();

    @Test
    void changesTheSizesOfThePart() {
        for (String part : List.of("fascia", "gutter", "rafter", "support")) {
            Sizes before = TASK.sizes();
            Sizes after = FollowUpTask.of(TASK, part, part).orElseThrow().sizes();
            assertThat(before.asMap().entrySet().stream()
                            .filter(size -> size.getKey().startsWith(part + "."))
                            .filter(size -> !size.getValue().equals(after.asMap().get(size.getKey()))))
                    .as(part)
                    .isNotEmpty();
        }
        assertThat(FollowUpTask.of(TASK, "roof", "roof").orElseThrow().sizes().number("pitch"))
                .isNotEqualTo(TASK.sizes().number("pitch"));
    }

    @Test
    void isTheSameEachTimeAndAsksForTheSame() {
        DrawingTask exercise = FollowUpTask.of(TASK, "gutter", "gutter").orElseThrow();
        assertThat(FollowUpTask.of(TASK, "gutter", "gutter")).contains(exercise);
        assertThat(exercise.title()).isEqualTo(TASK.title() + ", again: gutter");
        assertThat(Solver.solve(exercise).values())
                .extracting(Expected::key)
                .isEqualTo(Solver.solve(TASK).values().stream().map(Expected::key).toList());
    }

    @Test
    void staysATaskFileWhateverTheNamesLength() {
        DrawingTask longNamed = new DrawingTask(
                "a".repeat(60),
                "Section ".repeat(15).strip(),
                TASK.detail(),
                TASK.scale(),
                TASK.eaves(),
                TASK.sizes(),
                TASK.sheet(),
                TASK.marking());
        DrawingTask exercise = FollowUpTask.of(longNamed, "barge-board", "barge board").orElseThrow();
        assertThat(TaskFile.read(TaskFile.write(exercise))).isEqualTo(new TaskReading.Accepted(exercise));
        assertThat(new SheetCode(exercise.id(), "L1", 1).payload()).contains("-again-barge-board");
        assertThat(FollowUpTask.id(TASK, "gutter")).isEqualTo("boathouse-eaves-again-gutter");
    }
}
