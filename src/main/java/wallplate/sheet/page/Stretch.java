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
    private static final double PRINTED_FRAME = 0.06;
    private static final double DRAWN_FRAME = 0.25;
    private static final double PRINTED_MARKS = 0.05;
    /** Two bars, each drawn to a tenth of a millimetre. */
    private static final double SECOND_BAR = 0.15;
    /** A frame with lines squarer than a learner draws them was printed. */
    private static final double PRINTED_CROOKEDNESS = 0.05;
    /** The margins of ISO 5457: 20 mm for filing at the left, 10 mm elsewhere. */
    private static final double FRAME_ACROSS = 30;
    private static final double FRAME_UP = 20;
    private static final double LARGEST = 0.012;

    private record Evidence(double factor, double percent) {}

    /**
     * The stretch that all evidence together gives.
     *
     * @param sheetWidth the sheet's width in the rough page's x direction
     * @param filingMarginAlongX whether the frame's wider margin lies at an end of the x direction
     * @param secondBar the factor that makes a second bar as long as the first, where there is one
     */
    public static Stretch of(
            RoughPage rough,
            Optional<Frame> frame,
            double sheetWidth,
            double sheetHeight,
            boolean filingMarginAlongX,
            Optional<Double> secondBar) {
        List<Evidence> evidence = new ArrayList<>();
        evidence.add(captured(rough));
        if (rough.scale() == Scale.EDGES) {
            evidence.add(new Evidence(1, rough.kind() == Kind.SCAN ? EDGES : CAMERA_EDGES));
        }
        if (rough.scale() == Scale.MARKS) {
            evidence.add(new Evidence(1, PRINTED_MARKS));
        }
        frame.flatMap(found -> framed(found, sheetWidth, sheetHeight, filingMarginAlongX))
                .ifPresent(evidence::add);
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

    /** The stretch that gives a frame the proportions of the standard margins, if it is near them. */
    private static Optional<Evidence> framed(Frame frame, double sheetWidth, double sheetHeight, boolean filingAlongX) {
        double width = sheetWidth - (filingAlongX ? FRAME_ACROSS : FRAME_UP);
        double height = sheetHeight - (filingAlongX ? FRAME_UP : FRAME_ACROSS);
        double factor = height / width * frame.width() / frame.height();
        boolean proportioned = Math.abs(factor - 1) < LARGEST;
        boolean sized = frame.width() > 0.9 * width && frame.width() < 1.1 * width;
        if (!proportioned || !sized || frame.crookednessDegrees() > 0.3) {
            return Optional.empty();
        }
        double percent = frame.crookednessDegrees() < PRINTED_CROOKEDNESS ? PRINTED_FRAME : DRAWN_FRAME;
        return Optional.of(new Evidence(factor, percent));
    }
}
