package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.layout.LabelPlacement.Placed;
import wallplate.drafting.layout.TitleBlock.Cell;
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
import wallplate.solver.Caution;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;

/** Composes the model answer: the expected drawing on its sheet, with all that stands around it. */
public final class ModelSheet {

    private static final double TITLE_HEIGHT = 3.5;
    private static final double SCALE_HEIGHT = 2.5;
    /** From the drawing or its lowest dimension to the title's capitals. */
    private static final double TITLE_GAP = 6;
    private static final double TITLE_LINE = 5.5;
    /** The share of the frame's width that a line of the title may take. */
    private static final double TITLE_SHARE = 0.7;
    /** Title, underline and scale, for a title of one line. */
    private static final double TITLE_ROOM = TITLE_LINE + SCALE_HEIGHT + 3;

    private static final double NOTE_HEIGHT = 2.5;
    private static final double NOTE_LINE = 4.2;
    private static final double NOTE_WIDTH = 95;
    /** Between a label's text and the notes. */
    private static final double CLEAR_OF_NOTES = 1.5;

    private final ExpectedDrawing drawing;
    private final DrawingTask task;
    private final DrawingOptions options;
    private final TextMeasure measure;
    private final DetailLines lines;
    private final TitleBlock titleBlock;
    private final SheetPlan plan;
    private final List<Dimension> dimensions;
    private final Placement placement;

    public ModelSheet(ExpectedDrawing drawing, DrawingOptions options, TextMeasure measure) {
        this.drawing = drawing;
        this.task = drawing.task();
        this.options = options;
        this.measure = measure;
        this.lines = new DetailLines(drawing.lines());
        this.titleBlock =
                new TitleBlock(SheetPlan.titleBlockWidth(task.sheet()), measure, task.title(), List.of(cells()));
        this.plan = SheetPlan.of(task.sheet(), titleBlock.height());
        SizeFigures figures = new SizeFigures(drawing, options.figures());
        this.dimensions = options.dimensions()
                ? DimensionPlan.of(new DimensionRules(drawing, lines, figures, 1))
                : List.of();
        this.placement = placement();
    }

    private List<Cell> cells() {
        String sheet = task.sheet().name() + (task.sheet().landscape() ? " landscape" : " portrait");
        String sizes = switch (options.figures()) {
            case REAL -> "real mm";
            case PAPER -> "mm on paper";
            case DRAWN -> "whole mm on paper";
        };
        List<Cell> cells = new ArrayList<>(List.of(
                new Cell("Kind", "Model answer"),
                new Cell("Scale", task.scale().toString()),
                new Cell("Sheet", sheet)));
        if (options.dimensions()) {
            cells.add(new Cell("Sizes", sizes));
        }
        return cells;
    }

    /** Where on the sheet the heel point comes to lie. */
    public Point heel() {
        return placement.heel();
    }

    public Picture picture() {
        List<Ink> inks = new ArrayList<>();
        Clutter clutter = new Clutter(plan.sheet());
        clutter.add(plan.titleBlock().grown(1));
        clutter.add(plan.barRoom());
        drawing(inks, clutter);
        DimensionInk dimensionInk = new DimensionInk(measure, inks, clutter);
        Set<String> dimensioned = new HashSet<>();
        for (Dimension dimension : dimensions) {
            if (dimensionInk.drawWhereFree(dimension.placed(placement))) {
                dimensioned.add(dimension.key());
            }
        }
        title(inks, clutter);
        if (options.labels()) {
            labels(dimensioned, inks, clutter);
        }
        SheetFurniture.outline(plan.frame(), Pen.HEAVY, inks);
        titleBlock.draw(new Point(plan.titleBlock().left(), plan.titleBlock().bottom()), inks);
        SheetFurniture.bar(plan.bar(), inks);
        return new Picture(
                "model-" + task.id(), plan.sheet().width(), plan.sheet().height(), task.title(), description(), inks);
    }

    /** In the middle of the zone above title block and bar, with room for the title underneath. */
    private Placement placement() {
        boolean mirrored = task.eaves() == EavesSide.RIGHT;
        Box content = content();
        Point middle = plan.zone().centre();
        Point ideal = new Point(
                mirrored ? middle.x() + content.centre().x() : middle.x() - content.centre().x(),
                middle.y() - content.centre().y() + (TITLE_GAP + TITLE_ROOM) / 2);
        List<Segment> segments = new ArrayList<>();
        lines.all().forEach(line -> segments.add(line.segment()));
        dimensions.forEach(dimension -> segments.addAll(dimension.reach()));
        List<Box> taken = List.of(plan.titleBlock().grown(SheetPlan.CLEAR), plan.barRoom());
        return new PlacementSearch(plan.frame().grown(-SheetPlan.CLEAR + 1), taken, mirrored, segments).near(ideal);
    }

    private Box content() {
        Box content = lines.bounds();
        for (Dimension dimension : dimensions) {
            if (!dimension.reach().isEmpty()) {
                content = content.union(Box.around(dimension.reach()).grown(2));
            }
        }
        return content;
    }

    private void drawing(List<Ink> inks, Clutter clutter) {
        for (DrawnLine line : lines.all()) {
            Segment segment = placement.apply(line.segment());
            inks.add(LineInk.of(line, segment));
            boolean hatch = line.role() == LineRole.HATCH || line.role() == LineRole.DIAGONAL;
            clutter.add(segment, hatch ? Clutter.HATCH : Clutter.OUTLINE);
        }
    }

    /** Title and scale under the drawing, or in the nearest free place where there is no room under it. */
    private void title(List<Ink> inks, Clutter clutter) {
        Owner owner = Owner.of(Layer.TITLE);
        List<String> titleLines = new TextLines(measure)
                .broken(
                        task.title().toUpperCase(Locale.ROOT),
                        Typeface.LETTERING_STRONG,
                        TITLE_HEIGHT,
                        plan.frame().width() * TITLE_SHARE);
        double width = widest(titleLines, Typeface.LETTERING_STRONG, TITLE_HEIGHT);
        double height = titleLines.size() * TITLE_LINE + SCALE_HEIGHT + 3;
        Point middle = placeUnderDrawing(clutter, width, height);
        double y = middle.y() + TITLE_LINE - TITLE_HEIGHT;
        for (String line : titleLines) {
            y -= TITLE_LINE;
            inks.add(Ink.Lettering.level(
                    line, new Point(middle.x(), y), TITLE_HEIGHT, Alignment.MIDDLE, Typeface.LETTERING_STRONG, owner));
        }
        double underline = y - 1.4;
        inks.add(new Ink.Stroke(
                Segment.between(middle.x() - width / 2, underline, middle.x() + width / 2, underline),
                Pen.THIN,
                owner));
        inks.add(Ink.Lettering.level(
                "SCALE " + task.scale(),
                new Point(middle.x(), underline - SCALE_HEIGHT - 1.6),
                SCALE_HEIGHT,
                Alignment.MIDDLE,
                Typeface.LETTERING,
                owner));
        clutter.add(new Box(middle.x() - width / 2, middle.y() - height, middle.x() + width / 2, middle.y()));
    }

    /** The middle of the upper edge of the free place nearest to the drawing's foot. */
    private Point placeUnderDrawing(Clutter clutter, double width, double height) {
        Box content = content();
        Point foot = placement.apply(new Point(content.centre().x(), content.bottom()));
        Point best = new Point(foot.x(), foot.y() - TITLE_GAP);
        double least = Double.POSITIVE_INFINITY;
        Box room = plan.frame().grown(-SheetPlan.CLEAR);
        for (double down = -60; down <= 30; down += 3) {
            for (double across = -90; across <= 90; across += 3) {
                double distance = Math.hypot(across, down);
                Point middle = new Point(foot.x() + across, foot.y() - TITLE_GAP - down);
                Box box = new Box(middle.x() - width / 2, middle.y() - height, middle.x() + width / 2, middle.y());
                Box wide = box.grown(3);
                if (distance < least
                        && room.contains(box)
                        && clutter.isFree(wide.left(), wide.bottom(), wide.right(), wide.top())) {
                    least = distance;
                    best = middle;
                }
            }
        }
        return best;
    }

    private void labels(Set<String> dimensioned, List<Ink> inks, Clutter clutter) {
        SizeFigures figures = new SizeFigures(drawing, options.figures());
        PartNames names = new PartNames(task.sizes(), figures, options.dimensions(), dimensioned);
        LabelPlan labels = new LabelPlan(lines, names);
        LabelPlacement finder =
                new LabelPlacement(plan.frame().grown(-SheetPlan.CLEAR), clutter, labels.bodies(placement));
        List<LabelPlan.Label> all = labels.labels(placement);
        for (LabelPlan.Label label : all) {
            finder.add(label, measure.widthMm(label.text(), Typeface.LETTERING, LabelPlacement.TEXT_HEIGHT));
        }
        List<Placed> placed = finder.place();
        for (Placed place : placed) {
            label(place, inks);
            clutter.add(place.text().grown(CLEAR_OF_NOTES));
            clutter.add(place.leader(), Clutter.OUTLINE);
        }
        Set<LabelPlan.Label> named = placed.stream().map(Placed::label).collect(Collectors.toSet());
        List<String> unnamed = all.stream()
                .filter(label -> !named.contains(label))
                .map(LabelPlan.Label::text)
                .toList();
        if (!unnamed.isEmpty()) {
            notes(unnamed, inks, clutter);
        }
    }

    /** What no leader found room for, listed under the drawing: a part is never left without its sizes. */
    private void notes(List<String> texts, List<Ink> inks, Clutter clutter) {
        Owner owner = Owner.of(Layer.LABEL);
        List<String> notes = new TextLines(measure)
                .broken("Also drawn: " + String.join("; ", texts) + ".", Typeface.LETTERING, NOTE_HEIGHT, NOTE_WIDTH);
        double width = widest(notes, Typeface.LETTERING, NOTE_HEIGHT);
        Point middle = placeUnderDrawing(clutter, width, notes.size() * NOTE_LINE);
        double y = middle.y() + NOTE_LINE - NOTE_HEIGHT;
        for (String line : notes) {
            y -= NOTE_LINE;
            inks.add(Ink.Lettering.level(
                    line, new Point(middle.x(), y), NOTE_HEIGHT, Alignment.MIDDLE, Typeface.LETTERING, owner));
        }
    }

    private double widest(List<String> texts, Typeface typeface, double height) {
        return texts.stream()
                .mapToDouble(text -> measure.widthMm(text, typeface, height))
                .max()
                .orElse(0);
    }

    private static void label(Placed placed, List<Ink> inks) {
        Owner owner = Owner.of(Layer.LABEL, placed.label().part());
        inks.add(new Ink.Stroke(placed.leader(), Pen.THIN, owner));
        inks.add(new Ink.Stroke(placed.shelf(), Pen.THIN, owner));
        Point tip = placed.anchor().place();
        inks.add(placed.anchor().inside()
                ? Arrows.dot(tip, 0.9, owner)
                : Arrows.head(tip, placed.leader().vector(), 2, 0.7, owner));
        double x = placed.isTextOnTheRight() ? placed.text().left() : placed.text().right();
        inks.add(Ink.Lettering.level(
                placed.label().text(),
                new Point(x, placed.text().bottom()),
                LabelPlacement.TEXT_HEIGHT,
                placed.isTextOnTheRight() ? Alignment.START : Alignment.END,
                Typeface.LETTERING,
                owner));
    }

    private String description() {
        return "Model answer at scale %s on %s, eaves on the %s. %s"
                .formatted(task.scale(), task.sheet().name(), task.eaves().word(), Caution.TEXT);
    }
}
