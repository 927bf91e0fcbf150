package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wallplate.drafting.layout.Dimension.Angular;
import wallplate.drafting.layout.Dimension.Extension;
import wallplate.drafting.layout.Dimension.Linear;
import wallplate.drafting.paper.Alignment;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Shade;
import wallplate.drafting.paper.TextMeasure;
import wallplate.drafting.paper.Typeface;
import wallplate.geometry.Angles;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Inks dimensions on the sheet: extension lines, dimension line, filled arrowheads, the figure above the line, read from
 * below or from the right (common practice in technical drawing, ISO 129-1).
 *
 * <p>A figure goes to the middle of its line, or to another place along it, or outside, wherever no line runs through
 * it; if there is none, the whole dimension moves out by a step.
 */
final class DimensionInk {

    private static final double FIGURE_HEIGHT = 2.5;
    private static final double ARROW_LENGTH = 2.4;
    private static final double ARROW_WIDTH = 0.8;
    private static final double OVERSHOOT = 1.5;
    private static final double FIGURE_GAP = 0.7;
    /** From an arrowhead that points inwards to the end of its line. */
    private static final double TAIL = 2;

    private static final double STEP_OUT = 6;
    private static final int STEPS_OUT = 3;
    /** Where along the line a figure may have its middle, the usual place first. */
    private static final double[] SHARES = {0.5, 0.3, 0.7};

    private static final double[] RADIUS_FACTORS = {1, 1.4, 1.8, 0.7};

    private final TextMeasure measure;
    private final List<Ink> inks;
    private final Clutter clutter;
    private final Set<Segment> drawn = new HashSet<>();

    DimensionInk(TextMeasure measure, List<Ink> inks, Clutter clutter) {
        this.measure = measure;
        this.inks = inks;
        this.clutter = clutter;
    }

    /** What is to be inked for one dimension. */
    private record Plan(List<Segment> lines, List<Ink.Stroke> extensions, List<Ink.Area> arrows, Figure figure) {}

    /** Where the figure stands: the middle of its baseline, and the baseline's angle. */
    private record Figure(Point baseline, double angleDegrees, double width) {

        /** Through the middle of the letters. */
        Segment middle() {
            Vector half = Vector.atDegrees(angleDegrees).times(width / 2);
            Point centre = baseline.plus(
                    Vector.atDegrees(angleDegrees).leftNormal().times(FIGURE_HEIGHT / 2));
            return new Segment(centre.plus(half.negated()), centre.plus(half));
        }
    }

    /** Draws the dimension where there is room for it; answers whether there was. */
    boolean drawWhereFree(Dimension dimension) {
        for (Plan plan : plans(dimension)) {
            if (isFree(plan)) {
                ink(plan, dimension);
                return true;
            }
        }
        return false;
    }

    /** Draws the dimension, in its usual place if there is no better one. */
    void draw(Dimension dimension) {
        if (!drawWhereFree(dimension)) {
            ink(plans(dimension).get(0), dimension);
        }
    }

    private boolean isFree(Plan plan) {
        return clutter.isClear(plan.figure().middle(), FIGURE_HEIGHT / 2)
                && plan.lines().stream().noneMatch(clutter::crossesText)
                && plan.extensions().stream().noneMatch(line -> clutter.crossesText(line.segment()));
    }

    private void ink(Plan plan, Dimension dimension) {
        Owner owner = dimension.owner();
        for (Ink.Stroke extension : plan.extensions()) {
            // Dimensions in a chain share an extension line.
            if (drawn.add(extension.segment())) {
                inks.add(extension);
                clutter.add(extension.segment(), Clutter.DIMENSION);
            }
        }
        for (Segment line : plan.lines()) {
            inks.add(new Ink.Stroke(line, Pen.THIN, owner));
            clutter.add(line, Clutter.DIMENSION);
        }
        inks.addAll(plan.arrows());
        Figure figure = plan.figure();
        inks.add(new Ink.Lettering(
                dimension.figure(),
                figure.baseline(),
                FIGURE_HEIGHT,
                Alignment.MIDDLE,
                figure.angleDegrees(),
                Typeface.LETTERING,
                Shade.FULL,
                owner));
        clutter.addText(figure.middle(), FIGURE_HEIGHT / 2);
    }

    private List<Plan> plans(Dimension dimension) {
        List<Plan> plans = new ArrayList<>();
        double width = measure.widthMm(dimension.figure(), Typeface.LETTERING, FIGURE_HEIGHT);
        if (dimension instanceof Linear linear) {
            for (int step = 0; step < STEPS_OUT; step++) {
                plans.addAll(plans(linear.movedOut(step * STEP_OUT), width));
            }
        } else if (dimension instanceof Angular angular) {
            for (double factor : RADIUS_FACTORS) {
                plans.add(plan(angular, angular.radiusMm() * factor, width));
            }
        }
        return plans;
    }

    private List<Plan> plans(Linear dimension, double width) {
        List<Plan> plans = new ArrayList<>();
        double length = dimension.line().length();
        for (double share : SHARES) {
            if (width <= 2 * Math.min(share, 1 - share) * length - 0.6) {
                plans.add(plan(dimension, width, length * share, 0, 0));
            }
        }
        boolean arrowsInside = isRoomy(length);
        double outside = width + 1.6 + (arrowsInside ? 0 : ARROW_LENGTH);
        plans.add(plan(dimension, width, length + outside - width / 2 - 0.4, 0, outside));
        plans.add(plan(dimension, width, -(outside - width / 2 - 0.4), outside, 0));
        return plans;
    }

    private static boolean isRoomy(double length) {
        return length >= 2 * ARROW_LENGTH + 1.5;
    }

    /**
     * @param at where along the line the figure has its middle
     * @param before how far the line runs on before its start for the figure
     * @param after how far it runs on past its end
     */
    private Plan plan(Linear dimension, double width, double at, double before, double after) {
        Segment line = dimension.line();
        Vector along = line.vector().unit();
        boolean arrowsInside = isRoomy(line.length());
        double tail = arrowsInside ? 0 : ARROW_LENGTH + TAIL;
        Segment whole = new Segment(
                line.start().plus(along.times(-Math.max(tail, before))),
                line.end().plus(along.times(Math.max(tail, after))));
        Vector outwards = arrowsInside ? along : along.negated();
        List<Ink.Stroke> extensions = new ArrayList<>();
        extension(dimension.from(), line.start(), dimension.owner()).ifPresent(extensions::add);
        extension(dimension.to(), line.end(), dimension.owner()).ifPresent(extensions::add);
        double angle = readable(along.angleDegrees());
        Point baseline = line.start()
                .plus(along.times(at))
                .plus(Vector.atDegrees(angle).leftNormal().times(FIGURE_GAP));
        return new Plan(
                List.of(whole),
                extensions,
                List.of(
                        arrow(line.start(), outwards.negated(), dimension.owner()),
                        arrow(line.end(), outwards, dimension.owner())),
                new Figure(baseline, angle, width));
    }

    private static Optional<Ink.Stroke> extension(Extension extension, Point foot, Owner owner) {
        Vector whole = foot.minus(extension.start());
        if (whole.length() <= extension.gapMm() + 0.2) {
            return Optional.empty();
        }
        Vector along = whole.unit();
        Segment line = new Segment(
                extension.start().plus(along.times(extension.gapMm())), foot.plus(along.times(OVERSHOOT)));
        return Optional.of(new Ink.Stroke(line, extension.pen(), owner));
    }

    private static Ink.Area arrow(Point tip, Vector direction, Owner owner) {
        return Arrows.head(tip, direction, ARROW_LENGTH, ARROW_WIDTH, owner);
    }

    /** The angle at which a text along the line is read from below or from the right, in (-90, 90]. */
    private static double readable(double angleDegrees) {
        double angle = Angles.inclination(angleDegrees);
        return angle <= -89.99 ? 90 : angle;
    }

    private static Plan plan(Angular dimension, double radius, double width) {
        double from = dimension.fromDegrees();
        double to = dimension.toDegrees();
        Point apex = dimension.apex();
        List<Segment> lines = new ArrayList<>(dimension.leg(radius));
        int pieces = Math.max(6, (int) Math.ceil(Math.abs(to - from) / 2));
        for (int piece = 0; piece < pieces; piece++) {
            lines.add(new Segment(
                    onArc(apex, radius, from + (to - from) * piece / pieces),
                    onArc(apex, radius, from + (to - from) * (piece + 1) / pieces)));
        }
        double sense = Math.signum(to - from);
        double half = Math.toDegrees(ARROW_LENGTH / radius) / 2;
        List<Ink.Area> arrows = List.of(
                arrow(onArc(apex, radius, from), Vector.atDegrees(from + sense * (half - 90)), dimension.owner()),
                arrow(onArc(apex, radius, to), Vector.atDegrees(to - sense * (half - 90)), dimension.owner()));
        double bisector = (from + to) / 2;
        Point middle = onArc(apex, radius + 1 + width / 2, bisector);
        Point baseline = new Point(middle.x(), middle.y() - FIGURE_HEIGHT / 2);
        return new Plan(lines, List.of(), arrows, new Figure(baseline, 0, width));
    }

    private static Point onArc(Point apex, double radius, double degrees) {
        return apex.plus(Vector.atDegrees(degrees).times(radius));
    }
}
