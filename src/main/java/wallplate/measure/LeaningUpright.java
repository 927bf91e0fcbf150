package wallplate.measure;

import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/** Uprights as learners draw them, a degree or a few off plumb, from the level line they stand on. */
final class LeaningUpright {

    /** So far above its foot an upright is clear of the level line's own ink. */
    static final double CLEAR_OF_FOOT_MM = 0.4;

    /** How strongly the fit holds an upright plumb. */
    private static final double MOST_LEANING_DEGREES = 1;

    private static final double FIRST_PIECE_MM = 2.4;
    private static final double NEXT_PIECE_MM = 1.2;
    private static final double MOST_UPRIGHT_MM = 16;
    private static final double GOES_ON = 0.6;
    private static final double FIRST_WINDOW_MM = 0.25;

    private LeaningUpright() {}

    /** The upright that stands about x, between two heights. */
    static Edge between(DrawingView view, double x, double fromY, double toY) {
        return view.fit().fit(Level.uprightAt(x), fromY, toY, MOST_LEANING_DEGREES, FIRST_WINDOW_MM);
    }

    /** The upright that stands about x on a level line, for as long as it goes on. */
    static Edge followed(DrawingView view, double x, double footY) {
        double fromY = footY + CLEAR_OF_FOOT_MM;
        Edge upright = between(view, x, fromY, fromY + FIRST_PIECE_MM);
        for (double toY = fromY + FIRST_PIECE_MM; toY < fromY + MOST_UPRIGHT_MM; toY += NEXT_PIECE_MM) {
            if (inkAlong(view, upright, toY, toY + NEXT_PIECE_MM) < GOES_ON) {
                return upright;
            }
            upright = between(view, x, fromY, toY + NEXT_PIECE_MM);
        }
        return upright;
    }

    /** The share of an upright, as it leans, on which there is ink of an outline between two heights in any order. */
    static double inkAlong(DrawingView view, Edge upright, double fromY, double toY) {
        double from = upright.line().positionOf(new Point(upright.xAt(fromY), fromY));
        double to = upright.line().positionOf(new Point(upright.xAt(toY), toY));
        return view.fit().coverage(upright.line(), Math.min(from, to), Math.max(from, to), DrawingView.OUTLINE_PART);
    }
}
