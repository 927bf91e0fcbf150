package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.codes.CornerMarkInk;
import wallplate.drafting.codes.QrInk;
import wallplate.drafting.layout.TitleBlock.Cell;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Decimals;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.Shade;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.PrintedMarks;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;

/**
 * A learner's drawing sheet: what all sheets of a task have in common, and what is each sheet's own.
 *
 * <p>The frame steps around the marks and the code, which need white paper around them. What is printed where a learner
 * draws is light, so that a reader of the scan does not take it for pencil.
 */
public final class PrintedSheet {

    /** Between the white of a mark and the frame's line. */
    private static final double CLEAR_OF_MARK = 0.6;

    private static final double NOTE_HEIGHT = 1.8;
    private static final double NOTE_LINE = 3.4;
    private static final double BRIEF_WIDTH = 62;

    private final DrawingTask task;
    private final boolean brief;
    private final List<String> notes;
    private final PrintedMarks marks;
    private final TextMeasure measure;
    private final SheetPlan plan;

    public PrintedSheet(DrawingTask task, boolean brief, List<String> notes, TextMeasure measure) {
        this.task = task;
        this.brief = brief;
        this.notes = List.copyOf(notes);
        this.marks = PrintedMarks.of(task.sheet());
        this.measure = measure;
        this.plan = SheetPlan.of(task.sheet(), titleBlock("", "", "", "").height());
    }

    /** Frame, marks, the place of the bar, brief and notes. */
    public Picture common() {
        List<Ink> inks = new ArrayList<>();
        SheetFurniture.closed(frame(), Pen.HEAVY, inks);
        marks.marks().forEach(mark -> inks.addAll(CornerMarkInk.of(mark)));
        barPlace(inks);
        corner(inks);
        return picture(inks);
    }

    /** Title block and code. */
    public Picture own(String payload, String learner, String className, String date, int sheetNumber) {
        List<Ink> inks = new ArrayList<>();
        Point lowerLeft = new Point(plan.titleBlock().left(), plan.titleBlock().bottom());
        titleBlock(learner, className, date, Integer.toString(sheetNumber)).draw(lowerLeft, inks);
        inks.addAll(QrInk.of(payload, marks.code()));
        return picture(inks);
    }

    /** Both as one picture. */
    public Picture whole(Picture own) {
        List<Ink> inks = new ArrayList<>(common().inks());
        inks.addAll(own.inks());
        return picture(inks);
    }

    private Picture picture(List<Ink> inks) {
        return new Picture(
                "sheet-" + task.id(),
                plan.sheet().width(),
                plan.sheet().height(),
                "Drawing sheet: " + task.title(),
                "A sheet to draw on, with frame, title block, corner marks, code and a place for the reference bar",
                inks);
    }

    private TitleBlock titleBlock(String learner, String className, String date, String sheetNumber) {
        List<List<Cell>> rows = List.of(
                List.of(new Cell("Learner", learner, 2), new Cell("Class", className), new Cell("Date", date)),
                List.of(
                        new Cell("Scale", task.scale().toString()),
                        new Cell("Sheet", sheetNumber),
                        new Cell("Paper", task.sheet().name()),
                        new Cell("Sizes", "real mm")));
        double cut = markRoom() - (task.sheet().widthMm() - SheetPlan.frame(task.sheet()).right());
        return new TitleBlock(SheetPlan.titleBlockWidth(task.sheet()), measure, task.title(), rows).withCornerCut(cut);
    }

    /** How far a mark with its white reaches in from the paper's edges. */
    private static double markRoom() {
        return PrintedMarks.MARK_INSET + PrintedMarks.MARK_SIZE / 2 + PrintedMarks.MARK_QUIET_ZONE + CLEAR_OF_MARK;
    }

    private List<Point> frame() {
        Box box = plan.frame();
        double width = plan.sheet().right();
        double room = markRoom();
        double codeRoom = marks.code().size() / 2 + PrintedMarks.CODE_QUIET_ZONE + CLEAR_OF_MARK;
        double codeLeft = marks.code().centre().x() - codeRoom;
        double codeBottom = marks.code().centre().y() - codeRoom;
        return List.of(
                new Point(box.left(), box.bottom()),
                new Point(width - room, box.bottom()),
                new Point(width - room, room),
                new Point(box.right(), room),
                new Point(box.right(), codeBottom),
                new Point(codeLeft, codeBottom),
                new Point(codeLeft, box.top()),
                new Point(box.left(), box.top()));
    }

    /**
     * Corners outside the bar's ends, well below it, and a sentence: nothing that could be measured as a bar.
     */
    private void barPlace(List<Ink> inks) {
        Segment bar = marks.barPlace();
        double low = bar.start().y() - 7;
        Owner owner = Owner.of(Layer.REFERENCE_BAR);
        for (int side : new int[] {-1, 1}) {
            double x = (side < 0 ? bar.start().x() : bar.end().x()) + side * 4;
            inks.add(new Ink.Stroke(Segment.between(x, low, x, low + 2), Pen.FINE, Shade.LIGHT, owner));
            inks.add(new Ink.Stroke(Segment.between(x, low, x - side * 2, low), Pen.FINE, Shade.LIGHT, owner));
        }
        String words = "Draw your reference bar above these words: one level line " + Decimals.figure(bar.length())
                + " mm long, with an upright tick at each end.";
        TextLines text = new TextLines(measure);
        double y = low - 0.6;
        for (String line : text.broken(words, Typeface.LETTERING, NOTE_HEIGHT, bar.length() - 4)) {
            note(line, bar.midpoint().x(), y, Alignment.MIDDLE, owner, inks);
            y -= NOTE_LINE;
        }
    }

    private static void note(String words, double x, double y, Alignment alignment, Owner owner, List<Ink> inks) {
        inks.add(new Ink.Lettering(
                words, new Point(x, y), NOTE_HEIGHT, alignment, 0, Typeface.LETTERING, Shade.LIGHT, owner));
    }

    /** Brief and notes in the upper corner above the eaves. */
    private void corner(List<Ink> inks) {
        List<String> lines = new ArrayList<>();
        TextLines text = new TextLines(measure);
        List<String> paragraphs = new ArrayList<>(brief ? new Brief(task).lines() : List.of());
        paragraphs.addAll(notes);
        for (String paragraph : paragraphs) {
            lines.addAll(text.broken(paragraph, Typeface.LETTERING, NOTE_HEIGHT, BRIEF_WIDTH));
        }
        boolean right = task.eaves() == EavesSide.RIGHT;
        double left = right ? plan.frame().right() - BRIEF_WIDTH - 4 : plan.frame().left() + 4;
        double top = right ? marks.code().centre().y() - marks.code().size() / 2 - 6 : plan.frame().top() - 3;
        double y = top;
        for (String line : lines) {
            y -= NOTE_LINE;
            if (y < plan.zone().bottom()) {
                y = top - NOTE_LINE;
                left += (right ? -1 : 1) * (BRIEF_WIDTH + 6);
            }
            note(line, left, y, Alignment.START, Owner.of(Layer.NOTE), inks);
        }
    }
}
