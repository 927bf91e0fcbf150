package wallplate.drafting.layout;

import java.util.HashSet;
import java.util.List;
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
 */
final class DimensionInk {

    private static final double FIGURE_HEIGHT = 2.5;
    private static final double ARROW_LENGTH = 2.4;
    private static final double ARROW_WIDTH = 0.8;
    private static final double OVERSHOOT = 1.5;
    private static final double FIGURE_GAP = 0.7;

    private final TextMeasure measure;
    private final List<Ink> inks;
    private final Clutter clutter;
    private final Set<Segment> drawn = new HashSet<>();

    DimensionInk(TextMeasure measure, List<Ink> inks, Clutter clutter) {
        this.measure = measure;
        this.inks = inks;
        this.clutter = clutter;
    }

    void draw(Dimension dimension) {
        if (dimension instanceof Linear linear) {
            draw(linear);
        } else if (dimension instanceof Angular angular) {
            draw(angular);
        }
    }

    private void draw(Linear dimension) {
        Owner owner = dimension.owner();
        extension(dimension.from(), dimension.line().start(), owner);
        extension(dimension.to(), dimension.line().end(), owner);
        double width = measure.widthMm(dimension.figure(), Typeface.LETTERING, FIGURE_HEIGHT);
        Segment line = dimension.line();
        boolean arrowsInside = line.length() >= 2 * ARROW_LENGTH + 1.5;
        double share = dimension.figureShare();
        boolean figureInside = width <= 2 * Math.min(share, 1 - share) * line.length() - 0.6;
        Vector along = line.vector().unit();
        double before = arrowsInside ? 0 : ARROW_LENGTH + 2;
        double after = figureInside ? before : Math.max(before, width + 1.6 + (arrowsInside ? 0 : ARROW_LENGTH));
        line(new Segment(line.start().plus(along.times(-before)), line.end().plus(along.times(after))), owner);
        Vector outwards = arrowsInside ? along : along.negated();
        arrow(line.start(), outwards.negated(), owner);
        arrow(line.end(), outwards, owner);
        Point middle = figureInside
                ? line.at(dimension.figureShare())
                : line.end().plus(along.times(after - width / 2 - 0.4));
        figure(dimension.figure(), middle, along, width, owner);
    }

    private void extension(Extension extension, Point foot, Owner owner) {
        Vector whole = foot.minus(extension.start());
        if (whole.length() <= extension.gapMm() + 0.2) {
            return;
        }
        Vector along = whole.unit();
        Segment line = new Segment(
                extension.start().plus(along.times(extension.gapMm())), foot.plus(along.times(OVERSHOOT)));
        // Dimensions in a chain share an extension line.
        if (drawn.add(line)) {
            inks.add(new Ink.Stroke(line, extension.pen(), owner));
            clutter.add(line, Clutter.DIMENSION);
        }
    }

    private void line(Segment line, Owner owner) {
        inks.add(new Ink.Stroke(line, Pen.THIN, owner));
        clutter.add(line, Clutter.DIMENSION);
    }

    private void arrow(Point tip, Vector direction, Owner owner) {
        inks.add(Arrows.head(tip, direction, ARROW_LENGTH, ARROW_WIDTH, owner));
    }

    private void figure(String text, Point middle, Vector along, double width, Owner owner) {
        double angle = readable(along.angleDegrees());
        Vector up = Vector.atDegrees(angle).leftNormal();
        Point baseline = middle.plus(up.times(FIGURE_GAP));
        inks.add(new Ink.Lettering(
                text, baseline, FIGURE_HEIGHT, Alignment.MIDDLE, angle, Typeface.LETTERING, Shade.FULL, owner));
        Vector half = Vector.atDegrees(angle).times(width / 2);
        Point centre = baseline.plus(up.times(FIGURE_HEIGHT / 2));
        clutter.addText(new Segment(centre.plus(half.negated()), centre.plus(half)), FIGURE_HEIGHT / 2);
    }

    /** The angle at which a text along the line is read from below or from the right, in (-90, 90]. */
    private static double readable(double angleDegrees) {
        double angle = Angles.inclination(angleDegrees);
        return angle <= -89.99 ? 90 : angle;
    }

    private void draw(Angular dimension) {
        Owner owner = dimension.owner();
        dimension.reach().forEach(leg -> line(leg, owner));
        double from = dimension.fromDegrees();
        double to = dimension.toDegrees();
        int pieces = Math.max(6, (int) Math.ceil(Math.abs(to - from) / 2));
        Point previous = onArc(dimension, from);
        for (int piece = 1; piece <= pieces; piece++) {
            Point next = onArc(dimension, from + (to - from) * piece / pieces);
            line(new Segment(previous, next), owner);
            previous = next;
        }
        double sense = Math.signum(to - from);
        double half = Math.toDegrees(ARROW_LENGTH / dimension.radiusMm()) / 2;
        arrow(onArc(dimension, from), Vector.atDegrees(from + sense * (half - 90)), owner);
        arrow(onArc(dimension, to), Vector.atDegrees(to - sense * (half - 90)), owner);
        double bisector = (from + to) / 2;
        double width = measure.widthMm(dimension.figure(), Typeface.LETTERING, FIGURE_HEIGHT);
        Vector out = Vector.atDegrees(bisector);
        Point middle = onArc(dimension, bisector).plus(out.times(1 + width / 2));
        Point baseline = new Point(middle.x(), middle.y() - FIGURE_HEIGHT / 2);
        inks.add(Ink.Lettering.level(
                dimension.figure(), baseline, FIGURE_HEIGHT, Alignment.MIDDLE, Typeface.LETTERING, owner));
        clutter.add(new Box(
                middle.x() - width / 2, baseline.y(), middle.x() + width / 2, baseline.y() + FIGURE_HEIGHT));
    }

    private static Point onArc(Angular dimension, double degrees) {
        return dimension.apex().plus(Vector.atDegrees(degrees).times(dimension.radiusMm()));
    }
}
