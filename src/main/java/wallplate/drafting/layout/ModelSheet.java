package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import wallplate.drafting.Caution;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.layout.LabelPlacement.Placed;
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
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;

/** Composes the model answer: the expected drawing on its sheet, with all that stands around it. */
public final class ModelSheet {

    private static final double TITLE_HEIGHT = 3.5;
    private static final double SCALE_HEIGHT = 2.5;
    /** From the drawing or its lowest dimension to the title's capitals. */
    private static final double TITLE_GAP = 6;

    private final ExpectedDrawing drawing;
    private final DrawingOptions options;
    private final TextMeasure measure;
    private final DetailLines lines;
    private final SheetPlan plan;

    public ModelSheet(ExpectedDrawing drawing, DrawingOptions options, TextMeasure measure) {
        this.drawing = drawing;
        this.options = options;
        this.measure = measure;
        this.lines = new DetailLines(drawing.lines());
        this.plan = SheetPlan.of(drawing.task().sheet());
    }

    public Picture picture() {
        DrawingTask task = drawing.task();
        List<Dimension> dimensions = dimensions();
        Box content = content(dimensions);
        Placement placement = placement(content);
        List<Ink> inks = new ArrayList<>();
        Clutter clutter = new Clutter(plan.sheet());
        drawing(placement, inks, clutter);
        DimensionInk dimensionInk = new DimensionInk(measure, inks, clutter);
        dimensions.forEach(dimension -> dimensionInk.draw(dimension.placed(placement)));
        title(onSheet(content, placement), inks, clutter);
        if (options.labels()) {
            labels(placement, inks, clutter);
        }
        new SheetFurniture(plan, measure).modelAnswer(task, options, inks);
        return new Picture(
                "model-" + task.id(), plan.sheet().width(), plan.sheet().height(), task.title(), description(), inks);
    }

    /** Where on the sheet the heel point comes to lie. */
    public Point heel() {
        return placement(content(dimensions())).heel();
    }

    private List<Dimension> dimensions() {
        return options.dimensions() ? new DimensionPlan(drawing, lines, figures()).dimensions() : List.of();
    }

    private SizeFigures figures() {
        return new SizeFigures(drawing, options.figures());
    }

    private Box content(List<Dimension> dimensions) {
        Box content = lines.bounds();
        for (Dimension dimension : dimensions) {
            if (!dimension.reach().isEmpty()) {
                content = content.union(Box.around(dimension.reach()).grown(2));
            }
        }
        return content;
    }

    /** In the middle of the zone above title block and bar, with room for the title underneath. */
    private Placement placement(Box content) {
        boolean mirrored = drawing.task().eaves() == EavesSide.RIGHT;
        double titleRoom = TITLE_GAP + TITLE_HEIGHT + SCALE_HEIGHT + 4;
        Point centre = plan.zone().centre();
        double x = mirrored ? centre.x() + content.centre().x() : centre.x() - content.centre().x();
        double y = centre.y() - content.centre().y() + titleRoom / 2;
        return new Placement(new Point(x, y), mirrored);
    }

    private static Box onSheet(Box content, Placement placement) {
        return Box.around(List.of(placement.apply(
                Segment.between(content.left(), content.bottom(), content.right(), content.top()))));
    }

    private void drawing(Placement placement, List<Ink> inks, Clutter clutter) {
        for (DrawnLine line : lines.all()) {
            Segment segment = placement.apply(line.segment());
            inks.add(LineInk.of(line, segment));
            clutter.add(segment);
        }
    }

    private void title(Box content, List<Ink> inks, Clutter clutter) {
        Owner owner = Owner.of(Layer.TITLE);
        String title = drawing.task().title().toUpperCase(Locale.ROOT);
        double width = measure.widthMm(title, Typeface.LETTERING_STRONG, TITLE_HEIGHT);
        double x = (content.left() + content.right()) / 2;
        double y = content.bottom() - TITLE_GAP - TITLE_HEIGHT;
        inks.add(Ink.Lettering.level(
                title, new Point(x, y), TITLE_HEIGHT, Alignment.MIDDLE, Typeface.LETTERING_STRONG, owner));
        double underline = y - 1.4;
        inks.add(new Ink.Stroke(
                Segment.between(x - width / 2, underline, x + width / 2, underline), Pen.THIN, owner));
        inks.add(Ink.Lettering.level(
                "SCALE " + drawing.task().scale(),
                new Point(x, underline - SCALE_HEIGHT - 1.6),
                SCALE_HEIGHT,
                Alignment.MIDDLE,
                Typeface.LETTERING,
                owner));
        clutter.add(new Box(x - width / 2, underline - SCALE_HEIGHT - 2, x + width / 2, y + TITLE_HEIGHT));
    }

    private void labels(Placement placement, List<Ink> inks, Clutter clutter) {
        PartNames names = new PartNames(drawing.task().sizes(), figures(), options.dimensions());
        LabelPlacement finder = new LabelPlacement(plan.zone(), clutter);
        for (LabelPlan.Label label : new LabelPlan(lines, names).labels(placement)) {
            finder.add(label, measure.widthMm(label.text(), Typeface.LETTERING, LabelPlacement.TEXT_HEIGHT));
        }
        finder.place().forEach(placed -> label(placed, inks));
    }

    private static void label(Placed placed, List<Ink> inks) {
        Owner owner = Owner.of(Layer.LABEL, placed.label().part());
        inks.add(new Ink.Stroke(placed.leader(), Pen.THIN, owner));
        inks.add(new Ink.Stroke(placed.shelf(), Pen.THIN, owner));
        Point tip = placed.anchor().place();
        inks.add(placed.anchor().inside()
                ? Arrows.dot(tip, 0.9, owner)
                : Arrows.head(tip, placed.leader().vector(), 2, 0.7, owner));
        double x = placed.textOnTheRight() ? placed.text().left() : placed.text().right();
        inks.add(Ink.Lettering.level(
                placed.label().text(),
                new Point(x, placed.text().bottom()),
                LabelPlacement.TEXT_HEIGHT,
                placed.textOnTheRight() ? Alignment.START : Alignment.END,
                Typeface.LETTERING,
                owner));
    }

    private String description() {
        DrawingTask task = drawing.task();
        return "Model answer at scale %s on %s, eaves on the %s. %s"
                .formatted(task.scale(), task.sheet().name(), task.eaves().word(), Caution.SENTENCE);
    }
}
