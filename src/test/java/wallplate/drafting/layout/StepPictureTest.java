package wallplate.drafting.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.solver.ConstructionStep;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;

class StepPictureTest {

    static List<DrawingTask> tasks() {
        return ModelSheetTest.tasks();
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void noLineRunsThroughAFigure(DrawingTask task) {
        List<ConstructionStep> steps = Solver.construction(task);
        StepPicture pictures = new StepPicture(
                    Solver.solve(task), steps, GuideWords.in(Locale.ENGLISH), FaceWidths.shared());
        for (int index = 0; index < steps.size(); index++) {
            assertThat(InkShapes.throughLetters(pictures.of(index)))
                    .as("step %d: %s", index + 1, steps.get(index).title())
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void everyStepThatCalculatesASizeOfItsOwnShowsADimension(DrawingTask task) {
        List<ConstructionStep> steps = Solver.construction(task);
        StepPicture pictures = new StepPicture(
                    Solver.solve(task), steps, GuideWords.in(Locale.ENGLISH), FaceWidths.shared());
        for (int index = 0; index < steps.size(); index++) {
            ConstructionStep step = steps.get(index);
            Picture picture = pictures.of(index);
            boolean calculates = step.calculation().stream().anyMatch(line -> line.contains(" / "));
            long figures = InkShapes.inks(picture, Ink.Lettering.class).stream()
                    .filter(text -> text.owner().layer() == Layer.DIMENSION)
                    .count();
            assertThat(figures > 0 || !calculates).as("step %d: %s", index + 1, step.title()).isTrue();
        }
    }
}
