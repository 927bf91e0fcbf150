package wallplate.sheet.page;

import java.util.List;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * The lines that say how the drawing's T-square lay, each measured over its whole length.
 *
 * @param tiltDegrees how far the axes are turned against the picture's sides, anticlockwise, roughly
 */
public record RuledLines(double tiltDegrees, List<RuledLine> alongX, List<RuledLine> alongY) {

    /** Fainter lines are streaks of a feeder, folds and shadows, as a share of the paper's grey. */
    private static final double FAINTEST = 0.1;

    /** A line so long that runs along one column or row of the picture's pixels is a streak, which no hand draws so square. */
    private static final double STREAK_MM = 100;

    private static final double STREAK_PIXELS = 0.3;
    /** Streaks are pale, as a share of the paper's grey. */
    private static final double DARKEST_STREAK = 0.3;

    public RuledLines {
        alongX = List.copyOf(alongX);
        alongY = List.copyOf(alongY);
    }

    /** The lines measured; those that hardly anywhere stand alone are left out. */
    public static RuledLines measured(AxisLines lines, LineRefit refit) {
        WholeStroke stroke = new WholeStroke(refit);
        return new RuledLines(
                lines.tiltDegrees(), measured(lines.alongX(), stroke, refit), measured(lines.alongY(), stroke, refit));
    }

    private static List<RuledLine> measured(List<Fitted> lines, WholeStroke stroke, LineRefit refit) {
        return lines.stream()
                .filter(line -> line.darkness() >= FAINTEST)
                .flatMap(line -> stroke.measured(line.segment()).stream()
                        .filter(ruled -> line.darkness() > DARKEST_STREAK || !isAlongPixels(ruled.segment(), refit)))
                .toList();
    }

    private static boolean isAlongPixels(Segment line, LineRefit refit) {
        return line.length() >= STREAK_MM && refit.offPixelAxes(line) < STREAK_PIXELS;
    }
}
