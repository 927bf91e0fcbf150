package wallplate.drafting.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import wallplate.drafting.ConstructionGuide;
import wallplate.solver.Caution;
import wallplate.solver.ConstructionStep;
import wallplate.solver.Solver;
import wallplate.task.Tasks;

class GuidePdfTest {

    @Test
    void everyStepIsPrintedWithItsTexts() throws IOException {
        var steps = Solver.construction(Tasks.boathouse());
        try (PDDocument document = Loader.loadPDF(ConstructionGuide.of(Tasks.boathouse()).pdf())) {
            assertThat(document.getNumberOfPages()).isEqualTo((steps.size() + 1) / 2);
            String text = new PDFTextStripper().getText(document);
            String words = text.replaceAll("\\s+", " ");
            for (ConstructionStep step : steps) {
                assertThat(words).contains(step.number() + " " + step.title());
                // Instruction and calculation stand side by side, so their lines mix; the first words do not.
                assertThat(words).contains(step.instruction().substring(0, 30));
                step.calculation().forEach(line -> assertThat(words).contains(line.substring(0, 12)));
            }
            assertThat(words).contains("sheet 1 of 9", Caution.TEXT);
        }
    }
}
