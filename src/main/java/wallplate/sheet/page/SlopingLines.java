package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * The longest family of parallel sloping lines on a page: in a section through a roof, its rafter and covering.
 *
 * @param directionDegrees their common direction in rough degrees
 * @param lines longest first
 */
public record SlopingLines(double directionDegrees, List<Fitted> lines) {

    private static final double FLATTEST = 4;
    private static final double SPREAD = 0.8;
    private static final double STEP = 0.25;
    private static final double FAMILY = 1.6;
    private static final double SHORTEST = 18;
    private static final double LEAST_PIECE = 3;
    private static final double LEAST_COVERAGE = 0.6;

    public SlopingLines {
        lines = List.copyOf(lines);
    }

    /** The family among rough segments; empty where nothing long slopes. */
    public static Optional<SlopingLines> among(List<Segment> segments, double tiltDegrees, LineRefit refit) {
        List<Segment> sloping = segments.stream()
                .filter(segment -> segment.length() > LEAST_PIECE)
                .filter(segment -> Math.abs(AxisLines.squareOff(segment.inclinationDegrees() - tiltDegrees)) > FLATTEST)
                .toList();
        double best = 0;
        double most = 0;
        for (double candidate = -90; candidate < 90; candidate += STEP) {
            double sum = 0;
            for (Segment segment : sloping) {
                double off = Angles.between(segment.inclinationDegrees(), candidate) / SPREAD;
                if (off < 3) {
                    sum += segment.length() * segment.length() * Math.exp(-0.5 * off * off);
                }
            }
            if (sum > most) {
                most = sum;
                best = candidate;
            }
        }
        List<Fitted> lines = most == 0 ? List.of() : fitted(sloping, best, refit);
        return lines.isEmpty() ? Optional.empty() : Optional.of(new SlopingLines(best, lines));
    }

    private static List<Fitted> fitted(List<Segment> sloping, double direction, LineRefit refit) {
        List<Segment> members = sloping.stream()
                .filter(segment -> Angles.between(segment.inclinationDegrees(), direction) < FAMILY)
                .toList();
        List<Fitted> fitted = new ArrayList<>();
        for (Segment joined : new SegmentMerge(0.5, 8).merge(members)) {
            if (joined.length() < SHORTEST) {
                continue;
            }
            refit.fit(joined)
                    .filter(line -> line.coverage() > LEAST_COVERAGE)
                    .filter(line -> fitted.stream().noneMatch(other -> besides(other.segment(), line.segment()) < 0.4))
                    .ifPresent(fitted::add);
        }
        return fitted;
    }

    /** How far apart two lines of the family run. */
    private static double besides(Segment first, Segment second) {
        return Math.abs(first.line().distanceTo(second.midpoint()));
    }

    /** The length of all its lines together. */
    public double totalLength() {
        return lines.stream().mapToDouble(line -> line.segment().length()).sum();
    }
}
