package wallplate.sheet.page;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * Tells level lines that were ruled along the paper from those of the drawing: dimension lines, leaders and lines under
 * lettering are narrow, as ISO 128 has them, and are often ruled after the drawing was taken off its board.
 *
 * <p>Only narrow level lines that agree better with the frame than with the outlines are taken for such. Narrow upright ones
 * are construction lines, drawn along the set square.
 */
final class NarrowLines {

    /** Outlines this long say how dark outlines are, and a frame this long how the paper lies. */
    private static final double LONG_OUTLINE = 25;

    private static final double LONG_FRAME = 60;
    /** A narrow line is this much fainter than outlines. */
    private static final double NARROW_SHARE = 0.75;

    private NarrowLines() {}

    /**
     * The drawing's lines without the level ones that were ruled along the paper.
     *
     * @param all with the frame's
     */
    static AxisLines without(AxisLines drawn, AxisLines all, boolean levelAlongX) {
        double tilt = drawn.tiltDegrees();
        OptionalDouble darkness = Weighted.middle(lines(drawn)
                .filter(line -> line.segment().length() > LONG_OUTLINE)
                .map(line -> new Weighted(line.darkness(), line.segment().length())));
        double narrow = NARROW_SHARE * darkness.orElse(0);
        OptionalDouble level = Weighted.middle(lines(drawn)
                .filter(line -> line.segment().length() > LONG_OUTLINE && line.darkness() >= narrow)
                .map(line -> new Weighted(angle(line, tilt), line.segment().length())));
        List<Fitted> ownLines = lines(drawn).toList();
        OptionalDouble frame = Weighted.middle(lines(all)
                .filter(line -> line.segment().length() > LONG_FRAME && !ownLines.contains(line))
                .map(line -> new Weighted(angle(line, tilt), line.segment().length())));
        if (level.isEmpty() || frame.isEmpty()) {
            return drawn;
        }
        List<Fitted> kept = (levelAlongX ? drawn.alongX() : drawn.alongY())
                .stream()
                        .filter(line -> line.darkness() >= narrow
                                || Math.abs(angle(line, tilt) - level.getAsDouble())
                                        <= Math.abs(angle(line, tilt) - frame.getAsDouble()))
                        .toList();
        return levelAlongX
                ? new AxisLines(tilt, kept, drawn.alongY())
                : new AxisLines(tilt, drawn.alongX(), kept);
    }

    private static Stream<Fitted> lines(AxisLines lines) {
        return Stream.concat(lines.alongX().stream(), lines.alongY().stream());
    }

    private static double angle(Fitted line, double tilt) {
        return AxisLines.squareOff(line.segment().inclinationDegrees() - tilt);
    }
}
