package wallplate.measure;

import java.util.OptionalDouble;
import wallplate.stroke.Edge;

/** Tells whether a timber cut across is crossed by its two diagonals, as section timbers are. */
final class Diagonals {

    /** At least so much of the weaker diagonal is there where both were drawn, however faintly. */
    private static final double CROSSED = 0.55;
    /** Not more than this looks like the weaker diagonal where none were drawn. */
    private static final double NOT_CROSSED = 0.42;

    private final Pattern pattern;

    Diagonals(DrawingView view) {
        this.pattern = new Pattern(view);
    }

    /** How much of the weaker diagonal is there, 0 to 1; empty where the outline is too small to say. */
    OptionalDouble share(Edge left, Edge right, Edge lower, Edge upper) {
        return pattern.crossed(
                Level.crossing(left, lower), Level.crossing(right, lower), Level.crossing(left, upper),
                Level.crossing(right, upper));
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
