package wallplate.drafting.paper;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** One piece of ink on a page. */
public sealed interface Ink {

    Owner owner();

    Shade shade();

    /** The same ink elsewhere on the page. */
    Ink shifted(Vector offset);

    /** A straight line. */
    record Stroke(Segment segment, Pen pen, Shade shade, Owner owner) implements Ink {

        public Stroke(Segment segment, Pen pen, Owner owner) {
            this(segment, pen, Shade.FULL, owner);
        }

        @Override
        public Stroke shifted(Vector offset) {
            Segment moved = new Segment(segment.start().plus(offset), segment.end().plus(offset));
            return new Stroke(moved, pen, shade, owner);
        }
    }

    /**
     * A line of text.
     *
     * @param at where the baseline starts, has its middle or ends, as the alignment says
     * @param heightMm the height of a capital letter
     * @param angleDegrees of the baseline, anticlockwise
     */
    record Lettering(
            String text,
            Point at,
            double heightMm,
            Alignment alignment,
            double angleDegrees,
            Typeface typeface,
            Shade shade,
            Owner owner)
            implements Ink {

        public static Lettering level(
                String text, Point at, double heightMm, Alignment alignment, Typeface typeface, Owner owner) {
            return new Lettering(text, at, heightMm, alignment, 0, typeface, Shade.FULL, owner);
        }

        /** Where the baseline starts, given how long the text is. */
        public Point start(double widthMm) {
            return at.plus(Vector.atDegrees(angleDegrees).times(-alignment.share() * widthMm));
        }

        @Override
        public Lettering shifted(Vector offset) {
            return new Lettering(text, at.plus(offset), heightMm, alignment, angleDegrees, typeface, shade, owner);
        }
    }

    /** An area filled with ink: an arrowhead, a dot, a module of a code. */
    record Area(List<Point> corners, Shade shade, Owner owner) implements Ink {

        public Area {
            corners = List.copyOf(corners);
        }

        @Override
        public Area shifted(Vector offset) {
            return new Area(corners.stream().map(corner -> corner.plus(offset)).toList(), shade, owner);
        }

        public static Area rectangle(double left, double bottom, double width, double height, Owner owner) {
            return new Area(
                    List.of(
                            new Point(left, bottom),
                            new Point(left + width, bottom),
                            new Point(left + width, bottom + height),
                            new Point(left, bottom + height)),
                    Shade.FULL,
                    owner);
        }
    }
}
