package wallplate.drafting.layout;

import java.util.List;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** A dimension as it is planned, in the detail's own axes. */
sealed interface Dimension {

    /** The measured key that it gives, such as {@code wall.thickness}. */
    String key();

    String figure();

    Owner owner();

    /** The same as seen on the sheet. */
    Dimension placed(Placement placement);

    /** What it reaches to, for finding room. */
    List<Segment> reach();

    /**
     * A length.
     *
     * @param line the dimension line, between the arrowheads
     * @param from the measured place that belongs to the line's start; an extension line runs from it
     * @param to the measured place that belongs to the line's end
     */
    record Linear(
            String key,
            Segment line,
            Extension from,
            Extension to,
            String figure,
            Owner owner)
            implements Dimension {

        /** The same dimension with its line farther from what it measures. */
        Linear movedOut(double distance) {
            if (distance == 0) {
                return this;
            }
            Vector square = line.vector().unit().leftNormal();
            double side = square.dot(line.start().minus(from.start())) + square.dot(line.end().minus(to.start()));
            Vector out = square.times(side < 0 ? -distance : distance);
            Segment moved = new Segment(line.start().plus(out), line.end().plus(out));
            return new Linear(key, moved, from, to, figure, owner);
        }

        @Override
        public Linear placed(Placement placement) {
            return new Linear(
                    key,
                    placement.apply(line),
                    from.placed(placement),
                    to.placed(placement),
                    figure,
                    owner);
        }

        @Override
        public List<Segment> reach() {
            return List.of(line);
        }
    }

    /**
     * Where an extension line starts, and how it is drawn.
     *
     * @param gapMm left clear between the drawing and the extension line
     */
    record Extension(Point start, double gapMm, Pen pen) {

        static Extension thin(Point start) {
            return new Extension(start, 1, Pen.THIN);
        }

        /** Along an axis of the drawing, as for the centre line of a wall or post. */
        static Extension centreLine(Point start) {
            return new Extension(start, 0, Pen.CHAIN);
        }

        Extension placed(Placement placement) {
            return new Extension(placement.apply(start), gapMm, pen);
        }
    }

    /**
     * An angle at a point, from one direction to another.
     *
     * @param radiusMm in the detail's own axes, as the point is
     * @param fromDegrees the first leg's direction
     * @param toDegrees the second leg's direction
     * @param legMm how far a line of its own runs along the first leg past the arc; 0 where the drawing has one
     */
    record Angular(
            String key,
            Point apex,
            double radiusMm,
            double fromDegrees,
            double toDegrees,
            double legMm,
            String figure,
            Owner owner)
            implements Dimension {

        @Override
        public Angular placed(Placement placement) {
            double from = placement.mirrored() ? 180 - fromDegrees : fromDegrees;
            double to = placement.mirrored() ? 180 - toDegrees : toDegrees;
            double enlargement = placement.enlargement();
            return new Angular(
                    key,
                    placement.apply(apex),
                    radiusMm * enlargement,
                    from,
                    to,
                    legMm * enlargement,
                    figure,
                    owner);
        }

        @Override
        public List<Segment> reach() {
            return leg(radiusMm);
        }

        /** The line of its own along the first leg, if it has one, for an arc of the radius given. */
        List<Segment> leg(double radius) {
            return legMm == 0
                    ? List.of()
                    : List.of(new Segment(apex, apex.plus(Vector.atDegrees(fromDegrees).times(radius + legMm))));
        }
    }
}
