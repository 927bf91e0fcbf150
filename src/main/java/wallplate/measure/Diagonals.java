package wallplate.measure;

import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/** Tells whether a timber cut across is crossed by its two diagonals, as section timbers are. */
final class Diagonals {

    /** At least so much of the weaker diagonal is there where both were drawn, however faintly. */
    private static final double CROSSED = 0.55;
    /** Not more than this looks like the weaker diagonal where none were drawn. */
    private static final double NOT_CROSSED = 0.42;

    /** The ink in the middle of a small box with diagonals and the mean within it, as parts of an outline's, and both without. */
    private static final double INKED_MIDDLE = 0.45;

    private static final double INKED_MEAN = 0.25;
    private static final double BARE = 0.15;

    private final Pattern pattern;

    Diagonals(DrawingView view) {
        this.pattern = new Pattern(view);
    }

    /** How much of the weaker diagonal is there, 0 to 1; empty where the outline is too small to say. */
    OptionalDouble share(Edge left, Edge right, Edge lower, Edge upper) {
        Point lowerLeft = Level.crossing(left, lower);
        Point lowerRight = Level.crossing(right, lower);
        Point upperLeft = Level.crossing(left, upper);
        Point upperRight = Level.crossing(right, upper);
        OptionalDouble crossed = pattern.crossed(lowerLeft, lowerRight, upperLeft, upperRight);
        return crossed.isPresent() ? crossed : ofSmallBox(pattern.fillOf(lowerLeft, lowerRight, upperLeft, upperRight));
    }

    /**
     * In a box too small to follow its diagonals there is a crossing in the middle, and nothing but paper where none were
     * drawn; what is neither is half of them.
     */
    private static OptionalDouble ofSmallBox(Optional<Pattern.Fill> fill) {
        if (fill.isEmpty()) {
            return OptionalDouble.empty();
        }
        double middle = fill.get().middle();
        double mean = fill.get().mean();
        if (middle > INKED_MIDDLE && mean > INKED_MEAN) {
            return OptionalDouble.of(1);
        }
        return OptionalDouble.of(middle < BARE && mean < BARE ? 0 : (NOT_CROSSED + CROSSED) / 2);
    }

    /** Puts down whether diagonals cross. */
    static void put(Findings findings, String key, OptionalDouble share) {
        if (share.isEmpty()) {
            findings.uncertain("the outline is too small to see whether diagonals cross in it", key);
        } else if (share.getAsDouble() > NOT_CROSSED && share.getAsDouble() < CROSSED) {
            findings.uncertain("diagonals seem to cross the outline, but too little of them is there to be sure", key);
        } else {
            findings.yesNo(key, share.getAsDouble() >= CROSSED);
        }
    }
}
