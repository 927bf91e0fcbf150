package wallplate.measure;

import java.util.stream.DoubleStream;
import wallplate.geometry.Line;
import wallplate.stroke.Edge;

/** How broad a drawing's strokes are, in millimetres at half the height of their ink. */
final class UsualBreadth {

    /** A pencil's stroke, where nothing tells. */
    static final double UNKNOWN_MM = 0.4;

    private static final double PIECE_MM = 2;
    private static final double PIECES_APART_MM = 3;
    private static final double UNBROKEN = 0.8;
    private static final double DIRECTION_DOUBT_DEGREES = 0.15;
    private static final double WINDOW_MM = 0.2;

    private UsualBreadth() {}

    /** The middle breadth of an edge's unbroken pieces: over a longer piece its wavering would count as breadth. */
    static double of(DrawingView view, Edge edge) {
        double[] breadths = DoubleStream.iterate(
                        edge.from() + PIECE_MM, at -> at < edge.to() - 2 * PIECE_MM, at -> at + PIECES_APART_MM)
                .filter(at -> view.fit().coverage(edge.line(), at, at + PIECE_MM, DrawingView.OUTLINE_PART) > UNBROKEN)
                .map(at -> ofPiece(view, edge.line(), at, at + PIECE_MM))
                .sorted()
                .toArray();
        return breadths.length == 0 ? UNKNOWN_MM : breadths[breadths.length / 2];
    }

    /** The breadth of a short piece of a line that is roughly known. */
    static double ofPiece(DrawingView view, Line line, double from, double to) {
        return view.fit().breadth(view.fit().fit(line, from, to, DIRECTION_DOUBT_DEGREES, WINDOW_MM));
    }
}
