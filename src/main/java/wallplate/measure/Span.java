package wallplate.measure;

import java.util.Map;
import java.util.Optional;

/** How the lines lie between which a key is measured, and in which direction the distance is taken. */
enum Span {
    /** Level, between two upright lines. */
    LEVEL(2, 2, "two upright lines"),
    /** Upright, between two level lines. */
    UPRIGHT(2, 2, "two level lines"),
    /** Plumb, between two sloping lines. */
    PLUMB(2, 2, "two lines along the slope"),
    /** Square to the slope, between two sloping lines. */
    SQUARE(2, 2, "two lines along the slope"),
    /** Along the slope, between two lines square to it. */
    ALONG(2, 2, "two lines square to the slope"),
    /** The angle of one sloping line, or the mean of two. */
    ANGLE(1, 2, "one or two lines along the slope"),
    /** Upright, from a level line to the free upper end of an upright one. */
    RIM(2, 2, "the level line at the bottom and the upright line with the free end"),
    /** Square to the slope, from where a level and an upright line meet to a sloping one. */
    OFFSET(3, 3, "the level line on top of the plate, its upright outer face, and the underside of the rafter"),
    /** Along the slope, from where a sloping and an upright line meet down to a line square to the slope. */
    BEYOND(3, 3, "the top of the rafter, its plumb cut, and the line square to the slope that ends the covering"),
    /** Level, between the middles of two groups of upright lines, each of one or two. */
    MIDDLES(
            3,
            4,
            "both faces of the post, and both faces of the wall, or its outer face alone where the post is set out from that");

    private static final Map<String, Span> OF_KEY = Map.ofEntries(
            Map.entry("roof.pitch", ANGLE),
            Map.entry("wall.thickness", LEVEL),
            Map.entry("wall-plate.width", LEVEL),
            Map.entry("wall-plate.depth", UPRIGHT),
            Map.entry("rafter.depth", SQUARE),
            Map.entry("rafter.overhang", LEVEL),
            Map.entry("support.width", ALONG),
            Map.entry("support.depth", SQUARE),
            Map.entry("support.spacing", ALONG),
            Map.entry("covering.thickness", SQUARE),
            Map.entry("covering.gap", SQUARE),
            Map.entry("tie-beam.depth", UPRIGHT),
            Map.entry("ceiling.drop", UPRIGHT),
            Map.entry("brander.width", LEVEL),
            Map.entry("brander.depth", UPRIGHT),
            Map.entry("brander.spacing", LEVEL),
            Map.entry("fascia.thickness", LEVEL),
            Map.entry("fascia.depth", UPRIGHT),
            Map.entry("gutter.width", LEVEL),
            Map.entry("gutter.depth", RIM),
            Map.entry("barge-board.depth", PLUMB),
            Map.entry("barge-board.clearance", LEVEL),
            Map.entry("post.width", LEVEL),
            Map.entry("post.position", MIDDLES),
            Map.entry("rafter.heel-offset", OFFSET),
            Map.entry("covering.projection", BEYOND),
            Map.entry("high-wall.thickness", LEVEL),
            Map.entry("high-wall.clear-span", LEVEL),
            Map.entry("high-plate.width", LEVEL),
            Map.entry("high-plate.depth", UPRIGHT));

    private final int fewest;
    private final int most;
    private final String lines;

    Span(int fewest, int most, String lines) {
        this.fewest = fewest;
        this.most = most;
        this.lines = lines;
    }

    /** Empty where a key is not told by lines: a number of things, or a pattern. */
    static Optional<Span> of(String key) {
        return Optional.ofNullable(OF_KEY.get(key));
    }

    /** How many lines are needed at least. */
    int fewest() {
        return fewest;
    }

    /** How many lines can be taken. */
    int most() {
        return most;
    }

    /** Which lines are to be chosen, such as "two upright lines". */
    String lines() {
        return lines;
    }
}
