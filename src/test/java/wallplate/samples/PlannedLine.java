package wallplate.samples;

import wallplate.geometry.Point;

/**
 * A straight line that the learner means to draw, in the section's own axes (origin at the heel point, x inwards).
 *
 * @param name part and edge, such as {@code rafter.top}; lines that nothing is measured on have an empty name
 */
record PlannedLine(String name, Point from, Point to, Weight weight) {

    /** How hard the pencil is pressed for a line of its kind. */
    enum Weight {
        /** Outlines of cut parts. */
        OUTLINE,
        /** Parts seen beyond, crossing diagonals, hatching. */
        THIN,
        /** The break line: thin, and past everything. */
        BREAK,
        /** A ceiling board that is drawn as one line. */
        HEAVY,
        /** Construction lines that were not rubbed out. */
        FAINT,
        /** What is left of a line that was rubbed out. */
        GHOST
    }

    double length() {
        return from.distanceTo(to);
    }
}
