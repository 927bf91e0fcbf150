package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Angles;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * The straight lines of a page that run along the drawing's two axes, each fitted in the picture.
 *
 * @param tiltDegrees how far the axes are turned against the picture's sides, anticlockwise, roughly
 * @param alongX lines in the direction of the picture's x axis, longest first
 * @param alongY lines in the direction of the picture's y axis, longest first
 */
public record AxisLines(double tiltDegrees, List<Fitted> alongX, List<Fitted> alongY) {

    private static final double LARGEST_TILT = 9;
    private static final double TILT_STEP = 0.05;
    private static final double TILT_SPREAD = 0.35;
    private static final double FAMILY = 2.5;
    private static final double SHORTEST = 5;
    private static final double LEAST_COVERAGE = 0.55;
    private static final double LARGEST_RESIDUAL = 0.15;
    private static final double END_ALLOWANCE = 0.3;

    public AxisLines {
        alongX = List.copyOf(alongX);
        alongY = List.copyOf(alongY);
    }

    /** The axis lines among rough segments. */
    public static AxisLines among(List<Segment> segments, LineRefit refit) {
        double tilt = tilt(segments);
        return new AxisLines(tilt, family(segments, tilt, refit), family(segments, tilt + 90, refit));
    }

    /** The direction near the picture's sides along which, or square to which, most length runs. */
    private static double tilt(List<Segment> segments) {
        double best = 0;
        double most = -1;
        for (double candidate = -LARGEST_TILT; candidate <= LARGEST_TILT; candidate += TILT_STEP) {
            double sum = 0;
            for (Segment segment : segments) {
                double off = squareOff(segment.inclinationDegrees() - candidate) / TILT_SPREAD;
                if (Math.abs(off) < 4) {
                    sum += Math.min(40, segment.length()) * Math.exp(-0.5 * off * off);
                }
            }
            if (sum > most) {
                most = sum;
                best = candidate;
            }
        }
        return best;
    }

    /** An angle without regard to quarter turns, in [-45, 45). */
    static double squareOff(double angleDegrees) {
        double off = (angleDegrees + 45) % 90;
        return (off < 0 ? off + 90 : off) - 45;
    }

    private static List<Fitted> family(List<Segment> segments, double direction, LineRefit refit) {
        List<Segment> members = segments.stream()
                .filter(segment -> Angles.between(segment.inclinationDegrees(), direction) < FAMILY)
                .toList();
        List<Fitted> first = fitted(new SegmentMerge(0.5, 2.5).merge(members), direction, refit);
        // A short rough piece points a little wrong and misses its neighbours; once fitted, it does not.
        List<Segment> straight = first.stream().map(Fitted::segment).toList();
        return fitted(new SegmentMerge(0.3, 12).merge(straight), direction, refit);
    }

    private static List<Fitted> fitted(List<Segment> joined, double direction, LineRefit refit) {
        List<Fitted> fitted = new ArrayList<>();
        for (Segment segment : joined) {
            if (segment.length() < SHORTEST) {
                continue;
            }
            refit.fit(inset(segment))
                    .filter(line -> line.coverage() > LEAST_COVERAGE && line.residual() < LARGEST_RESIDUAL)
                    .filter(line -> Angles.between(line.segment().inclinationDegrees(), direction) < FAMILY)
                    .filter(line -> fitted.stream().noneMatch(other -> same(other.segment(), line.segment())))
                    .ifPresent(fitted::add);
        }
        fitted.sort(Comparator.comparingDouble((Fitted line) -> line.segment().length()).reversed());
        return fitted;
    }

    private static Segment inset(Segment segment) {
        double fraction = END_ALLOWANCE / segment.length();
        return new Segment(segment.at(fraction), segment.at(1 - fraction));
    }

    /** Whether a fitted line is another one found once more, from the other edge of the same stroke. */
    private static boolean same(Segment longer, Segment shorter) {
        return distance(longer, shorter.start()) < 0.25 && distance(longer, shorter.end()) < 0.25;
    }

    private static double distance(Segment segment, Point point) {
        return segment.distanceTo(point);
    }
}
