package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

class ConstructionTest {

    @Test
    void linesInEveryLineOfTheDrawingOnce() {
        DrawingTask task = Tasks.boathouse();
        List<DrawnLine> linedIn = Solver.construction(task).stream()
                .flatMap(step -> step.linedIn().stream())
                .toList();
        assertThat(linedIn)
                .containsExactlyInAnyOrderElementsOf(Solver.solve(task).lines());
    }

    @Test
    void countsTheStepsFromOne() {
        List<ConstructionStep> steps = Solver.construction(Tasks.boathouse());
        assertThat(steps)
                .extracting(ConstructionStep::number)
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, steps.size()).boxed().toList());
    }

    @Test
    void drawsThePitchBeforeWhatStandsOnIt() {
        List<String> parts = Solver.construction(Tasks.boathouse()).stream()
                .map(ConstructionStep::part)
                .toList();
        assertThat(parts.indexOf("wall-plate")).isLessThan(parts.indexOf("rafter"));
        assertThat(parts.indexOf("rafter")).isLessThan(parts.indexOf("support"));
        assertThat(parts.indexOf("support")).isLessThan(parts.indexOf("covering"));
        assertThat(parts.indexOf("fascia")).isLessThan(parts.indexOf("gutter"));
    }

    @Test
    void tellsTheArithmeticAndWhatToMeasureFromWhere() {
        ConstructionStep supports = Solver.construction(Tasks.boathouse()).stream()
                .filter(step -> step.part().equals("support"))
                .findFirst()
                .orElseThrow();
        assertThat(supports.title()).isEqualTo("Draw the purlins");
        assertThat(supports.calculation()).contains("spacing: 900 / 20 = 45 mm", "width: 50 / 20 = 2.5 mm, drawn 3 mm");
        assertThat(supports.instruction()).contains("step off 45 mm along the slope from centre to centre");
    }

    @ParameterizedTest
    @ValueSource(strings = {"posts", "barge-board", "gutter", "fascia", "ceiling", "tie-beam"})
    void hasNoStepForAPartThatIsLeftOut(String part) {
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE.replaceAll("(?m)^" + part + ":.*\n", ""));
        String drawn = part.equals("posts") ? "post" : part;
        assertThat(Solver.construction(task)).extracting(ConstructionStep::part).doesNotContain(drawn);
        assertThat(Solver.construction(task))
                .allSatisfy(step -> assertThat(step.instruction() + step.title() + step.calculation())
                        .doesNotContain("{", "NaN", "null"));
    }
}
