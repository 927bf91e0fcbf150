package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
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
    /** Pieces of a line that hatching or diagonals part are joined where all of it is inked. */
    private static final double SHORTEST_PIECE = 3;

    private static final double WHOLE_COVERAGE = 0.9;
    /** Nearer to the likeliest direction than this, another one is the same. */
    private static final double OTHER_TILT = 3;
    /** A direction with less than this share of the likeliest one's length is not tried. */
    private static final double OTHER_SHARE = 0.15;

    private static final Comparator<Fitted> LONGEST_FIRST =
            Comparator.comparingDouble((Fitted line) -> line.segment().length()).reversed();

    public AxisLines {
        alongX = List.copyOf(alongX);
        alongY = List.copyOf(alongY);
    }

    /** The axis lines among rough segments, for one direction. */
    public static AxisLines along(double tilt, List<Segment> segments, LineRefit refit) {
        return new AxisLines(tilt, family(segments, tilt, refit), family(segments, tilt + 90, refit));
    }

    /**
     * The directions near the picture's sides along which, or square to which, most length runs, likeliest first. There are
     * two where a shallow roof on a sheet that lies askew may have more length than the lines along its T-square.
     */
    public static List<Double> tilts(List<Segment> segments) {
        int count = (int) Math.round(2 * LARGEST_TILT / TILT_STEP) + 1;
        double[] sums = new double[count];
        for (int i = 0; i < count; i++) {
            sums[i] = lengthAlong(tiltAt(i), segments);
        }
        int best = highest(sums, i -> true);
        int other = highest(sums, i -> Math.abs(tiltAt(i) - tiltAt(best)) > OTHER_TILT && isSummit(sums, i));
        return other < 0 || sums[other] < OTHER_SHARE * sums[best]
                ? List.of(tiltAt(best))
                : List.of(tiltAt(best), tiltAt(other));
    }

    private static double tiltAt(int step) {
        return -LARGEST_TILT + step * TILT_STEP;
    }

    private static double lengthAlong(double tilt, List<Segment> segments) {
        double sum = 0;
        for (Segment segment : segments) {
            double off = squareOff(segment.inclinationDegrees() - tilt) / TILT_SPREAD;
            if (Math.abs(off) < 4) {
                sum += Math.min(40, segment.length()) * Math.exp(-0.5 * off * off);
            }
        }
        return sum;
    }

    /** The first of the highest that may be taken; -1 where none may. */
    private static int highest(double[] sums, IntPredicate allowed) {
        int best = -1;
        for (int i = 0; i < sums.length; i++) {
            if (allowed.test(i) && (best < 0 || sums[i] > sums[best])) {
                best = i;
            }
        }
        return best;
    }

    private static boolean isSummit(double[] sums, int i) {
        return (i == 0 || sums[i] >= sums[i - 1]) && (i == sums.length - 1 || sums[i] >= sums[i + 1]);
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
        List<Segment> joined = new SegmentMerge(0.5, 2.5).merge(members);
        List<Fitted> first = fitted(joined, SHORTEST, LEAST_COVERAGE, direction, refit);
        // A short rough piece points a little wrong and misses its neighbours; once fitted, it does not.
        List<Fitted> lines = fitted(segments(new SegmentMerge(0.3, 12), first), SHORTEST, LEAST_COVERAGE, direction, refit);
        List<Segment> pieces =
                joined.stream().filter(segment -> segment.length() < SHORTEST).toList();
        List<Fitted> shorts = fitted(pieces, SHORTEST_PIECE, WHOLE_COVERAGE, direction, refit);
        return with(lines, fitted(segments(new SegmentMerge(0.3, 8), shorts), 2 * SHORTEST, WHOLE_COVERAGE, direction, refit));
    }

    private static List<Segment> segments(SegmentMerge merge, List<Fitted> lines) {
        return merge.merge(lines.stream().map(Fitted::segment).toList());
    }

    /** The lines with those of the others that are not found already, longest first. */
    private static List<Fitted> with(List<Fitted> lines, List<Fitted> others) {
        List<Fitted> all = new ArrayList<>(lines);
        others.stream()
                .filter(line -> lines.stream().noneMatch(known -> isBeside(known.segment(), line.segment())))
                .forEach(all::add);
        all.sort(LONGEST_FIRST);
        return all;
    }

    private static boolean isBeside(Segment known, Segment line) {
        return known.distanceTo(line.midpoint()) < 0.5;
    }

    private static List<Fitted> fitted(
            List<Segment> joined, double shortest, double leastCoverage, double direction, LineRefit refit) {
        List<Fitted> fitted = new ArrayList<>();
        for (Segment segment : joined) {
            if (segment.length() < shortest) {
                continue;
            }
            refit.fit(inset(segment))
                    .filter(line -> line.coverage() > leastCoverage && line.residual() < LARGEST_RESIDUAL)
                    .filter(line -> Angles.between(line.segment().inclinationDegrees(), direction) < FAMILY)
                    .filter(line -> fitted.stream().noneMatch(other -> same(other.segment(), line.segment())))
                    .ifPresent(fitted::add);
        }
        fitted.sort(LONGEST_FIRST);
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
