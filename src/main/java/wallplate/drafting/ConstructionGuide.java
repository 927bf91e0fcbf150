package wallplate.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import wallplate.drafting.layout.GuideSheets;
import wallplate.drafting.layout.GuideWords;
import wallplate.drafting.layout.StepPicture;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.drafting.pdf.PdfBook;
import wallplate.drafting.svg.SvgWriter;
import wallplate.solver.ConstructionStep;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;

/**
 * How a drawing is made by hand, step by step: to step through on screen, and as a PDF to hand out.
 *
 * <p>The texts and the order come from the parts of the detail; the pictures from the lines of each step.
 */
public final class ConstructionGuide {

    private final DrawingTask task;
    private final GuideWords words;
    private final List<ConstructionStep> steps;
    private final StepPicture pictures;

    private ConstructionGuide(ExpectedDrawing drawing, List<ConstructionStep> steps, GuideWords words) {
        this.task = drawing.task();
        this.words = words;
        this.steps = steps.stream().map(words::worded).toList();
        this.pictures = new StepPicture(drawing, this.steps, words, FaceWidths.shared());
    }

    /** The guide in English. */
    public static ConstructionGuide of(DrawingTask task) {
        return of(task, Locale.ENGLISH);
    }

    public static ConstructionGuide of(DrawingTask task, Locale language) {
        return new ConstructionGuide(Solver.solve(task), Solver.construction(task), GuideWords.in(language));
    }

    public List<GuideStep> steps() {
        SvgWriter writer = new SvgWriter(FaceWidths.shared());
        List<GuideStep> shown = new ArrayList<>();
        for (int index = 0; index < steps.size(); index++) {
            ConstructionStep step = steps.get(index);
            shown.add(new GuideStep(
                    step.number(),
                    step.part(),
                    step.title(),
                    step.calculation(),
                    step.instruction(),
                    writer.inline(pictures.of(index))));
        }
        return List.copyOf(shown);
    }

    /** Upright A4 sheets, two steps to a sheet. */
    public byte[] pdf() {
        try (PdfBook book = new PdfBook(words.text("head", task.title()), words.language())) {
            for (Picture sheet : new GuideSheets(task, steps, pictures, words, FaceWidths.shared()).sheets()) {
                book.add(sheet);
            }
            return book.bytes();
        }
    }
}
