package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import wallplate.drafting.Figures;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.paper.Shade;
import wallplate.drafting.paper.TextMeasure;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.ConstructionStep;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.EavesSide;

/**
 * The picture of one step of the construction: what is there already light, this step's faint lines thin, its lined-in
 * lines in full weight, and where to measure as dimensions.
 *
 * <p>A step that draws something small is shown enlarged, beside a small view of the whole that says where it is; where only
 * some of its measures are small, they are shown in an enlarged view of their own.
 */
public final class StepPicture {

    public static final double WIDTH = 178;
    public static final double HEIGHT = 104;

    /** Room around lines and dimension lines, for figures and arrowheads. */
    private static final double MARGIN = 7;

    private static final double COLUMN = 54;
    private static final double INSET_HEIGHT = 44;
    /** Shorter than this a dimension has no room for its arrowheads. */
    private static final double TINY = 6.5;
    /** What is shown around tiny dimensions, in the detail's own millimetres. */
    private static final double AROUND_TINY = 1.5;

    private static final Box CANVAS = new Box(0, 0, WIDTH, HEIGHT);

    private static final double LARGEST = 4;
    /** A step that is smaller than this share of the drawing is enlarged. */
    private static final double SMALL = 0.4;

    private final ExpectedDrawing drawing;
    private final List<ConstructionStep> steps;
    private final GuideWords words;
    private final TextMeasure measure;
    private final DetailLines lines;
    private final boolean mirrored;

    /** @param steps in the words that the pictures are described in */
    public StepPicture(
            ExpectedDrawing drawing, List<ConstructionStep> steps, GuideWords words, TextMeasure measure) {
        this.drawing = drawing;
        this.steps = List.copyOf(steps);
        this.words = words;
        this.measure = measure;
        this.lines = new DetailLines(drawing.lines());
        this.mirrored = drawing.task().eaves() == EavesSide.RIGHT;
    }

    /** The picture of the step at an index, counted from 0. */
    public Picture of(int index) {
        ConstructionStep step = steps.get(index);
        List<Ink> inks = new ArrayList<>();
        Box whole = lines.bounds();
        Box own = own(step);
        List<Dimension> tiny = tinyDimensions(step, fitted(whole, CANVAS).enlargement());
        if (own.width() < SMALL * whole.width() && own.height() < SMALL * whole.height()) {
            overview(index, own, inks);
            view(index, own, besideColumn(), dimension -> true, inks);
        } else if (!tiny.isEmpty()) {
            Box near = around(tiny).grown(AROUND_TINY);
            view(index, near, inset(), dimension -> isOneOf(tiny, dimension), inks);
            SheetFurniture.outline(inset(), Pen.THIN, inks);
            Placement main = view(index, whole, besideColumn(), dimension -> !isOneOf(tiny, dimension), inks);
            SheetFurniture.outline(onPage(near, main), Pen.THIN, inks);
        } else {
            view(index, whole, CANVAS, dimension -> true, inks);
        }
        return new Picture(
                "step-" + step.number() + "-" + drawing.task().id(),
                WIDTH,
                HEIGHT,
                words.text("picture", String.valueOf(step.number()), step.title()),
                step.instruction(),
                inks);
    }

    /** A column on the side of the eaves, for the small view of the whole or the enlarged one of a detail. */
    private Box column() {
        return mirrored
                ? new Box(WIDTH - COLUMN, 0, WIDTH, HEIGHT)
                : new Box(0, 0, COLUMN, HEIGHT);
    }

    private Box besideColumn() {
        return mirrored ? new Box(0, 0, WIDTH - COLUMN, HEIGHT) : new Box(COLUMN, 0, WIDTH, HEIGHT);
    }

    private Box inset() {
        Box column = column();
        return new Box(column.left() + 1, HEIGHT - INSET_HEIGHT - 1, column.right() - 1, HEIGHT - 1);
    }

    private static Box onPage(Box box, Placement placement) {
        return Box.around(List.of(
                placement.apply(Segment.between(box.left(), box.bottom(), box.right(), box.top()))));
    }

    /** Dimensions too short to hold their arrowheads when the whole drawing is shown. */
    private List<Dimension> tinyDimensions(ConstructionStep step, double enlargement) {
        return new StepDimensions(step, lines, rules(enlargement))
                .dimensions().stream()
                        .filter(dimension -> dimension instanceof Dimension.Linear linear
                                && linear.line().length() * enlargement < TINY)
                        .toList();
    }

    private static boolean isOneOf(List<Dimension> dimensions, Dimension dimension) {
        return dimensions.stream().anyMatch(one -> one.key().equals(dimension.key()));
    }

    /** The measured places, without their dimension lines. */
    private static Box around(List<Dimension> dimensions) {
        List<Segment> measured = new ArrayList<>();
        for (Dimension dimension : dimensions) {
            if (dimension instanceof Dimension.Linear linear) {
                measured.add(new Segment(linear.from().start(), linear.to().start()));
            }
        }
        return Box.around(measured);
    }

    /** What the step draws and measures; the whole where it draws nothing that stays. */
    private Box own(ConstructionStep step) {
        if (step.linedIn().isEmpty()) {
            return lines.bounds();
        }
        List<Segment> shown = new ArrayList<>();
        step.linedIn().forEach(line -> shown.add(line.segment()));
        for (Dimension dimension : new StepDimensions(step, lines, rules(1)).dimensions()) {
            if (dimension instanceof Dimension.Linear linear) {
                shown.add(new Segment(linear.from().start(), linear.to().start()));
            }
        }
        return Box.around(shown);
    }

    private DimensionRules rules(double enlargement) {
        return new DimensionRules(drawing, lines, new SizeFigures(drawing, Figures.DRAWN), enlargement);
    }

    /** Shows a part of the drawing as large as the window allows, with the dimensions that are wanted around it. */
    private Placement view(int index, Box region, Box window, Predicate<Dimension> wanted, List<Ink> inks) {
        ConstructionStep step = steps.get(index);
        Box withDimensions = region;
        for (Dimension dimension : dimensions(step, fitted(region, window), wanted)) {
            if (!dimension.reach().isEmpty()) {
                withDimensions = withDimensions.union(Box.around(dimension.reach()));
            }
        }
        Placement placement = fitted(withDimensions, window);
        List<Ink> shown = new ArrayList<>();
        drawing(index, placement, window.grown(-1), shown);
        DimensionInk dimensionInk = new DimensionInk(measure, shown, clutter(shown));
        dimensions(step, placement, wanted).forEach(dimension -> dimensionInk.draw(dimension.placed(placement)));
        inks.addAll(shown);
        return placement;
    }

    private List<Dimension> dimensions(ConstructionStep step, Placement placement, Predicate<Dimension> wanted) {
        return new StepDimensions(step, lines, rules(placement.enlargement()))
                .dimensions().stream().filter(wanted).toList();
    }

    private Placement fitted(Box view, Box canvas) {
        double enlargement = Math.min(
                LARGEST,
                Math.min(
                        (canvas.width() - 2 * MARGIN) / Math.max(1, view.width()),
                        (canvas.height() - 2 * MARGIN) / Math.max(1, view.height())));
        Point middle = view.centre();
        double across = mirrored ? -enlargement : enlargement;
        Point heel = new Point(
                canvas.centre().x() - across * middle.x(), canvas.centre().y() - enlargement * middle.y());
        return new Placement(heel, mirrored, enlargement);
    }

    private void drawing(int index, Placement placement, Box window, List<Ink> inks) {
        for (ConstructionStep earlier : steps.subList(0, index)) {
            // Setting-out lines stay in sight, the faint lines of finished parts do not.
            if (earlier.linedIn().isEmpty()) {
                faint(earlier, Shade.LIGHT, placement, window, inks);
            }
            lined(earlier, Shade.LIGHT, placement, window, inks);
        }
        faint(steps.get(index), Shade.FULL, placement, window, inks);
        lined(steps.get(index), Shade.FULL, placement, window, inks);
    }

    private static Clutter clutter(List<Ink> inks) {
        Clutter clutter = new Clutter(new Box(0, 0, WIDTH, HEIGHT));
        for (Ink ink : inks) {
            if (ink instanceof Ink.Stroke stroke) {
                clutter.add(stroke.segment(), Clutter.OUTLINE);
            }
        }
        return clutter;
    }

    private static void faint(ConstructionStep step, Shade shade, Placement placement, Box window, List<Ink> inks) {
        Owner owner = Owner.of(Layer.CONSTRUCTION, step.part());
        for (Segment line : step.faint()) {
            window.clipped(placement.apply(line))
                    .ifPresent(shown -> inks.add(new Ink.Stroke(shown, Pen.FINE, shade, owner)));
        }
    }

    private static void lined(ConstructionStep step, Shade shade, Placement placement, Box window, List<Ink> inks) {
        for (DrawnLine line : step.linedIn()) {
            window.clipped(placement.apply(line.segment()))
                    .ifPresent(shown -> inks.add(LineInk.of(line, shown, shade)));
        }
    }

    /** The whole drawing so far, small, with the enlarged region framed. */
    private void overview(int index, Box own, List<Ink> inks) {
        Box place = inset().grown(-2);
        Box whole = lines.bounds();
        double scale = Math.min(place.width() / whole.width(), place.height() / whole.height());
        double across = mirrored ? -scale : scale;
        Point heel = new Point(
                place.centre().x() - across * whole.centre().x(),
                place.top() - scale * whole.top());
        Placement placement = new Placement(heel, mirrored, scale);
        for (ConstructionStep shown : steps.subList(0, index + 1)) {
            for (DrawnLine line : shown.linedIn()) {
                Segment segment = placement.apply(line.segment());
                inks.add(new Ink.Stroke(segment, Pen.FINE, Shade.LIGHT, Owner.of(Layer.FRAME)));
            }
        }
        SheetFurniture.outline(onPage(own, placement).grown(1.5), Pen.THIN, inks);
    }
}
