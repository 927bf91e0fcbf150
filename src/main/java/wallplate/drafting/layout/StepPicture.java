package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
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
 * <p>A step that draws something small is shown enlarged, beside a small view of the whole that says where it is.
 */
public final class StepPicture {

    public static final double WIDTH = 178;
    public static final double HEIGHT = 104;

    /** Room around lines and dimension lines, for figures and arrowheads. */
    private static final double MARGIN = 7;

    private static final double WHOLE_WIDTH = 46;
    private static final double WHOLE_HEIGHT = 40;
    private static final double LARGEST = 4;
    /** A step that is smaller than this share of the drawing is enlarged. */
    private static final double SMALL = 0.4;

    private final ExpectedDrawing drawing;
    private final List<ConstructionStep> steps;
    private final TextMeasure measure;
    private final DetailLines lines;
    private final boolean mirrored;

    public StepPicture(ExpectedDrawing drawing, List<ConstructionStep> steps, TextMeasure measure) {
        this.drawing = drawing;
        this.steps = List.copyOf(steps);
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
        boolean small = own.width() < SMALL * whole.width() && own.height() < SMALL * whole.height();
        Box canvas = new Box(0, 0, WIDTH, HEIGHT);
        if (small) {
            Box place = overview(index, own, inks);
            canvas = mirrored
                    ? new Box(0, 0, place.left() - 2, HEIGHT)
                    : new Box(place.right() + 2, 0, WIDTH, HEIGHT);
        }
        Placement placement = fitted(step, small ? own : whole, canvas);
        step(index, placement, canvas.grown(-1), inks);
        return new Picture(
                "step-" + step.number() + "-" + drawing.task().id(),
                WIDTH,
                HEIGHT,
                "Step " + step.number() + ": " + step.title(),
                step.instruction(),
                inks);
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

    /** As large as the canvas allows with the dimensions around it, which keep their distance on the page. */
    private Placement fitted(ConstructionStep step, Box view, Box canvas) {
        Placement first = fitted(view, canvas);
        Box withDimensions = view;
        for (Dimension dimension : new StepDimensions(step, lines, rules(first.enlargement())).dimensions()) {
            if (!dimension.reach().isEmpty()) {
                withDimensions = withDimensions.union(Box.around(dimension.reach()));
            }
        }
        return fitted(withDimensions, canvas);
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

    private void step(int index, Placement placement, Box window, List<Ink> inks) {
        for (ConstructionStep earlier : steps.subList(0, index)) {
            // Setting-out lines stay in sight, the faint lines of finished parts do not.
            if (earlier.linedIn().isEmpty()) {
                faint(earlier, Shade.LIGHT, placement, window, inks);
            }
            lined(earlier, Shade.LIGHT, placement, window, inks);
        }
        ConstructionStep step = steps.get(index);
        faint(step, Shade.FULL, placement, window, inks);
        lined(step, Shade.FULL, placement, window, inks);
        DimensionInk dimensionInk = new DimensionInk(measure, inks, clutter(inks));
        for (Dimension dimension : new StepDimensions(step, lines, rules(placement.enlargement())).dimensions()) {
            dimensionInk.draw(dimension.placed(placement));
        }
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

    /** The whole drawing so far, small, with the enlarged region framed; answers where it stands. */
    private Box overview(int index, Box own, List<Ink> inks) {
        Box whole = lines.bounds();
        double scale = Math.min(WHOLE_WIDTH / whole.width(), WHOLE_HEIGHT / whole.height());
        double width = whole.width() * scale;
        double height = whole.height() * scale;
        double left = mirrored ? WIDTH - width - 3 : 3;
        Box place = new Box(left, HEIGHT - height - 3, left + width, HEIGHT - 3);
        double across = mirrored ? -scale : scale;
        Placement placement = new Placement(
                new Point(
                        place.centre().x() - across * whole.centre().x(),
                        place.centre().y() - scale * whole.centre().y()),
                mirrored,
                scale);
        for (ConstructionStep shown : steps.subList(0, index + 1)) {
            for (DrawnLine line : shown.linedIn()) {
                Owner owner = Owner.of(Layer.FRAME);
                Segment segment = placement.apply(line.segment());
                inks.add(new Ink.Stroke(segment, Pen.FINE, Shade.LIGHT, owner));
            }
        }
        Box region = Box.around(List.of(placement.apply(
                        Segment.between(own.left(), own.bottom(), own.right(), own.top()))))
                .grown(1.5);
        SheetFurniture.outline(region, Pen.THIN, inks);
        return place;
    }
}
