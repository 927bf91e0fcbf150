package wallplate.drafting.layout;

import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.drafting.paper.Shade;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;

/** The pen that each line of the expected drawing is lined in with. */
final class LineInk {

    private LineInk() {}

    static Ink.Stroke of(DrawnLine line, Segment place) {
        return new Ink.Stroke(place, pen(line), owner(line));
    }

    static Ink.Stroke of(DrawnLine line, Segment place, Shade shade) {
        return new Ink.Stroke(place, pen(line), shade, owner(line));
    }

    static Owner owner(DrawnLine line) {
        return new Owner(layer(line), line.part(), line.index(), line.edge());
    }

    static Pen pen(DrawnLine line) {
        return switch (line.role()) {
            case CUT_OUTLINE -> Pen.THICK;
            case SEEN_OUTLINE -> Pen.MEDIUM;
            case DIAGONAL, BREAK -> Pen.THIN;
            case HATCH -> Pen.FINE;
        };
    }

    private static Layer layer(DrawnLine line) {
        return switch (line.role()) {
            case CUT_OUTLINE -> Layer.CUT_OUTLINE;
            case SEEN_OUTLINE -> Layer.SEEN_OUTLINE;
            case DIAGONAL -> Layer.DIAGONAL;
            case BREAK -> Layer.BREAK;
            case HATCH -> Layer.HATCH;
        };
    }
}
