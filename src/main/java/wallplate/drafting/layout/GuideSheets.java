package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.ConstructionStep;
import wallplate.task.DrawingTask;

/** The construction guide on upright A4 sheets, two steps to a sheet. */
public final class GuideSheets {

    private static final double SHEET_WIDTH = 210;
    private static final double SHEET_HEIGHT = 297;
    private static final double LEFT = 20;
    private static final double RIGHT = 200;
    private static final double HEAD = 289;
    private static final double FOOT = 8;
    private static final int STEPS_A_SHEET = 2;
    private static final double STEP_HEIGHT = 135;
    private static final double TEXT_HEIGHT = 2.1;
    private static final double TEXT_LINE = 4.3;
    /** Calculations stand in a column of their own beside the instruction. */
    private static final double CALCULATION_WIDTH = 58;

    private static final Owner NOTE = Owner.of(Layer.NOTE);

    private final DrawingTask task;
    private final List<ConstructionStep> steps;
    private final StepPicture pictures;
    private final GuideWords words;
    private final TextLines text;

    /** @param steps in the words that the sheets are written in */
    public GuideSheets(
            DrawingTask task,
            List<ConstructionStep> steps,
            StepPicture pictures,
            GuideWords words,
            TextMeasure measure) {
        this.task = task;
        this.steps = List.copyOf(steps);
        this.pictures = pictures;
        this.words = words;
        this.text = new TextLines(measure);
    }

    public List<Picture> sheets() {
        int count = (steps.size() + STEPS_A_SHEET - 1) / STEPS_A_SHEET;
        List<Picture> sheets = new ArrayList<>(count);
        for (int sheet = 0; sheet < count; sheet++) {
            List<Ink> inks = new ArrayList<>();
            head(inks);
            foot(sheet + 1, count, inks);
            for (int place = 0; place < STEPS_A_SHEET; place++) {
                int index = sheet * STEPS_A_SHEET + place;
                if (index < steps.size()) {
                    step(index, HEAD - 8 - place * STEP_HEIGHT, inks);
                }
            }
            sheets.add(new Picture(
                    "guide-" + (sheet + 1),
                    SHEET_WIDTH,
                    SHEET_HEIGHT,
                    words.text("head", task.title()),
                    task.title(),
                    inks));
        }
        return sheets;
    }

    private void head(List<Ink> inks) {
        inks.add(Ink.Lettering.level(
                words.text("head", task.title()),
                new Point(LEFT, HEAD - 2.5),
                2.5,
                Alignment.START,
                Typeface.LETTERING_STRONG,
                NOTE));
        inks.add(Ink.Lettering.level(
                words.text("scale", task.scale().toString()),
                new Point(RIGHT, HEAD - 2.5),
                2.5,
                Alignment.END,
                Typeface.LETTERING_STRONG,
                NOTE));
        inks.add(new Ink.Stroke(Segment.between(LEFT, HEAD - 5, RIGHT, HEAD - 5), Pen.THICK, NOTE));
    }

    private void foot(int sheet, int count, List<Ink> inks) {
        inks.add(Ink.Lettering.level(
                words.text("foot"),
                new Point(LEFT, FOOT),
                1.8,
                Alignment.START,
                Typeface.LETTERING,
                NOTE));
        inks.add(Ink.Lettering.level(
                words.text("sheet", String.valueOf(sheet), String.valueOf(count)),
                new Point(RIGHT, FOOT),
                1.8,
                Alignment.END,
                Typeface.LETTERING,
                NOTE));
    }

    private void step(int index, double top, List<Ink> inks) {
        ConstructionStep step = steps.get(index);
        inks.add(Ink.Lettering.level(
                step.number() + "  " + step.title(),
                new Point(LEFT, top - 4.5),
                3.5,
                Alignment.START,
                Typeface.LETTERING_STRONG,
                NOTE));
        Vector offset = new Vector(LEFT + 1, top - 7 - StepPicture.HEIGHT);
        pictures.of(index).inks().forEach(ink -> inks.add(ink.shifted(offset)));
        double y = top - 7 - StepPicture.HEIGHT - 1;
        inks.add(new Ink.Stroke(Segment.between(LEFT, y, RIGHT, y), Pen.FINE, NOTE));
        boolean calculates = !step.calculation().isEmpty();
        double instructionLeft = calculates ? LEFT + CALCULATION_WIDTH : LEFT;
        paragraph(step.calculation(), LEFT, CALCULATION_WIDTH - 4, y, Typeface.LETTERING, inks);
        paragraph(
                List.of(step.instruction()), instructionLeft, RIGHT - instructionLeft, y, Typeface.TEXT, inks);
    }

    private void paragraph(
            List<String> texts, double left, double width, double top, Typeface typeface, List<Ink> inks) {
        double y = top - 1;
        double height = typeface == Typeface.LETTERING ? 2.5 : TEXT_HEIGHT;
        for (String paragraph : texts) {
            for (String line : text.broken(paragraph, typeface, height, width)) {
                y -= TEXT_LINE;
                inks.add(Ink.Lettering.level(line, new Point(left, y), height, Alignment.START, typeface, NOTE));
            }
        }
    }
}
