package wallplate.drafting.layout;

import java.util.List;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** A dimension as it is planned, in the detail's own axes. */
sealed interface Dimension {

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
    record Linear(Segment line, Extension from, Extension to, String figure, Owner owner) implements Dimension {

        @Override
        public Linear placed(Placement placement) {
            return new Linear(placement.apply(line), from.placed(placement), to.placed(placement), figure, owner);
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
     * @param fromDegrees the first leg's direction
     * @param toDegrees the second leg's direction
     */
    record Angular(Point apex, double radiusMm, double fromDegrees, double toDegrees, String figure, Owner owner)
            implements Dimension {

        @Override
        public Angular placed(Placement placement) {
            if (!placement.mirrored()) {
                return new Angular(placement.apply(apex), radiusMm, fromDegrees, toDegrees, figure, owner);
            }
            return new Angular(placement.apply(apex), radiusMm, 180 - fromDegrees, 180 - toDegrees, figure, owner);
        }

        @Override
        public List<Segment> reach() {
            return List.of();
        }
    }
}
