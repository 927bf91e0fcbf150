package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;

/**
 * By how much a page's y millimetres must be stretched so that both directions have one scale.
 *
 * <p>Each kind of evidence gives a factor and how sure it is; they are weighed together. A bar in one direction says
 * nothing about it.
 *
 * @param factor what rough y millimetres are multiplied with
 * @param deviationPercent one standard deviation of that, in percent
 */
public record Stretch(double factor, double deviationPercent) {

    /** Feeders stretch by some tenths of a percent; a flatbed's two directions differ by as much. */
    private static final double SCANNER = 0.3;
    /** ISO 216 lets a side of A4 be 1.5 or 2 mm off; paper is usually cut to a third of a millimetre. */
    private static final double EDGES = 0.12;
    private static final double CAMERA_EDGES = 0.15;
    private static final double FRAME = 0.07;
    private static final double PRINTED_MARKS = 0.05;
    /** Two bars, each drawn to a tenth of a millimetre. */
    private static final double SECOND_BAR = 0.15;
    /** What makes one direction longer than the other by a larger share than this is no scanner's stretch. */
    static final double LARGEST = 0.012;

    private record Evidence(double factor, double percent) {}

    /**
     * The stretch that all evidence together gives.
     *
     * @param printedFrame the factor that gives a printed frame its proportions, where there is one
     * @param secondBar the factor that makes a second bar as long as the first, where there is one
     */
    public static Stretch of(RoughPage rough, Optional<Double> printedFrame, Optional<Double> secondBar) {
        List<Evidence> evidence = new ArrayList<>();
        evidence.add(captured(rough));
        if (rough.scale() == Scale.EDGES) {
            evidence.add(new Evidence(1, rough.kind() == Kind.SCAN ? EDGES : CAMERA_EDGES));
        }
        if (rough.scale() == Scale.MARKS) {
            evidence.add(new Evidence(1, PRINTED_MARKS));
        }
        printedFrame.ifPresent(factor -> evidence.add(new Evidence(factor, FRAME)));
        secondBar
                .filter(factor -> Math.abs(factor - 1) < LARGEST)
                .ifPresent(factor -> evidence.add(new Evidence(factor, SECOND_BAR)));
        double weights = 0;
        double sum = 0;
        for (Evidence each : evidence) {
            double weight = 1 / (each.percent * each.percent);
            weights += weight;
            sum += weight * each.factor;
        }
        return new Stretch(sum / weights, 1 / Math.sqrt(weights));
    }

    /** A scanner's pixels are square but for its stretch; a camera's say nothing of a tilted sheet. */
    private static Evidence captured(RoughPage rough) {
        if (rough.kind() == Kind.PHOTOGRAPH) {
            return new Evidence(1, 1);
        }
        PageMap map = rough.map();
        Point origin = map.apply(Point.ORIGIN);
        double across = map.apply(new Point(100, 0)).distanceTo(origin);
        double up = map.apply(new Point(0, 100)).distanceTo(origin);
        return new Evidence(up / across, SCANNER);
    }
}
