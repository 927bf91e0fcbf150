package wallplate.stroke;

import java.util.Arrays;
import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/**
 * Fits a straight line to the ink near a line that is roughly known.
 *
 * <ol>
 *   <li>Profiles of ink are taken square to the line, every tenth of a millimetre, on
 *       long edges every fifth.
 *   <li>Each gives the centre of its ink under a Gaussian window that lies on the current line.
 *   <li>A straight line through the centres, weighted by their ink and made robust after Huber, replaces the current one.
 *   <li>The window is narrowed and the steps repeated, so that a neighbouring line 0.7 mm away no longer counts.
 * </ol>
 *
 * <p>The expectation gives the place to look at and, for short edges, the direction within a stated doubt; the values
 * come from the ink alone.
 */
public final class EdgeFit {

    private static final double[] WINDOW_SIGMAS_MM = {0.35, 0.3, 0.25, 0.2, 0.16, 0.16};
    private static final double ACROSS_STEP_MM = 0.05;
    private static final int ACROSS_REACH_STEPS = 12;
    /** The window's standard deviation per width of a heavy line. */
    private static final double HEAVY_WINDOW = 0.4;

    /** A line nearer than this mixes its ink with the edge's. */
    private static final double OTHER_LINE_MM = 0.6;

    private static final double HUBER_MM = 0.1;
    /** Pencil wobbles with a correlation length of some millimetres: so many profiles are one observation. */
    private static final double CORRELATION_MM = 1.5;

    private final InkImage ink;
    private final double outlineInk;

    /**
     * @param outlineInk the usual ink of this drawing's outlines, against which coverage is judged
     */
    public EdgeFit(InkImage ink, double outlineInk) {
        this.ink = ink;
        this.outlineInk = outlineInk;
    }

    /** Fits with the direction left free but for a mild pull of {@code directionDoubtDegrees} towards the one given. */
    public Edge fit(Line rough, double from, double to, double directionDoubtDegrees) {
        return fit(rough, from, to, directionDoubtDegrees, WINDOW_SIGMAS_MM[0]);
    }

    /**
     * @param firstWindowMm how far the rough line may be off: the widest standard deviation of the window; smaller
     *     where a neighbouring line lies close
     */
    public Edge fit(Line rough, double from, double to, double directionDoubtDegrees, double firstWindowMm) {
        return fit(rough, from, to, directionDoubtDegrees, firstWindowMm, List.of());
    }

    /**
     * @param others known lines that cross or touch the edge: where one lies near, the edge's own ink cannot be told
     *     from it and is left out
     */
    public Edge fit(
            Line rough, double from, double to, double directionDoubtDegrees, double firstWindowMm, List<Line> others) {
        Line line = new Line(rough.pointAt((from + to) / 2), rough.direction());
        double half = (to - from) / 2;
        double step = half > 15 ? 0.2 : 0.1;
        int profiles = Math.max(3, (int) Math.round(2 * half / step));
        double[] centre = new double[profiles];
        double[] mass = new double[profiles];
        double residual = 0;
        double inkedLength = 0;
        double narrowest = 0;
        for (int stage = 0; stage < WINDOW_SIGMAS_MM.length; stage++) {
            if (stage == WINDOW_SIGMAS_MM.length - 3) {
                narrowest = Math.min(firstWindowMm, HEAVY_WINDOW * width(line, half));
            }
            double sigma = Math.max(Math.min(WINDOW_SIGMAS_MM[stage], firstWindowMm), narrowest);
            measure(line, half, sigma, others, centre, mass);
            Solution solution = solve(centre, mass, half, directionDoubtDegrees);
            Vector across = line.direction().leftNormal();
            line = new Line(
                    line.origin().plus(across.times(solution.offset)),
                    line.direction().plus(across.times(solution.slope)));
            residual = solution.residual;
            inkedLength = solution.inked * step;
        }
        double[] onLine = peakInk(line, half, profiles);
        double[] sorted = onLine.clone();
        Arrays.sort(sorted);
        double threshold = 0.45 * outlineInk;
        double coverage = Arrays.stream(onLine).filter(value -> value >= threshold).count() / (double) profiles;
        double observations = Math.max(1, inkedLength / CORRELATION_MM);
        double sigma = Math.hypot(Math.max(residual, 0.02) / Math.sqrt(observations), 0.008);
        return new Edge(line, -half, half, sigma, residual, sorted[profiles / 2], coverage);
    }

    /** The breadth of an edge's ink across its line, in millimetres, at half the height of its mean; 0 where there is none. */
    public double breadth(Edge edge) {
        double[] mean = meanAcross(new Line(edge.middle(), edge.line().direction()), edge.length() / 2);
        int peak = 0;
        for (int k = 1; k < mean.length; k++) {
            peak = mean[k] > mean[peak] ? k : peak;
        }
        if (mean[peak] <= 0) {
            return 0;
        }
        // What is still dark at the end of the profile is at least as broad as that.
        double left = HalfHeight.stepsFrom(mean, peak, -1).orElse(peak);
        double right = HalfHeight.stepsFrom(mean, peak, 1).orElse(mean.length - 1 - peak);
        return (right + left) * ACROSS_STEP_MM;
    }

    /** The full width at half the height of the mean ink across a line: a heavy line needs a wider window. */
    private double width(Line line, double half) {
        double[] mean = meanAcross(line, half);
        int reach = ACROSS_REACH_STEPS;
        double peak = Math.max(mean[reach], Math.max(mean[reach - 1], mean[reach + 1]));
        int left = reach;
        int right = reach;
        while (left > 0 && mean[left] > peak / 2) {
            left--;
        }
        while (right < 2 * reach && mean[right] > peak / 2) {
            right++;
        }
        return (right - left - 1) * ACROSS_STEP_MM;
    }

    /** The mean ink over a line's length, at equal steps across it. */
    private double[] meanAcross(Line line, double half) {
        int reach = ACROSS_REACH_STEPS;
        double[] mean = new double[2 * reach + 1];
        Vector across = line.direction().leftNormal();
        int samples = Math.max(5, (int) Math.round(2 * half / 0.2));
        for (int sample = 0; sample < samples; sample++) {
            Point point = line.pointAt(-half + (sample + 0.5) * 2 * half / samples);
            for (int k = -reach; k <= reach; k++) {
                double offset = k * ACROSS_STEP_MM;
                mean[k + reach] += ink.at(point.x() + across.x() * offset, point.y() + across.y() * offset) / samples;
            }
        }
        return mean;
    }

    /** The share of a line's length with at least the given part of an outline's ink within 0.15 mm of it. */
    public double coverage(Line line, double from, double to, double partOfOutline) {
        double half = (to - from) / 2;
        Line centred = new Line(line.pointAt((from + to) / 2), line.direction());
        int profiles = Math.max(3, (int) Math.round(2 * half / 0.1));
        double[] onLine = peakInk(centred, half, profiles);
        return Arrays.stream(onLine).filter(value -> value >= partOfOutline * outlineInk).count() / (double) profiles;
    }

    /** The highest ink within 0.15 mm of the line at equal steps from one end to the other. */
    public double[] peakInk(Line line, double half, int profiles) {
        Vector across = line.direction().leftNormal();
        double[] peaks = new double[profiles];
        for (int profile = 0; profile < profiles; profile++) {
            double position = -half + (profile + 0.5) * 2 * half / profiles;
            Point point = line.pointAt(position);
            double highest = 0;
            for (double offset = -0.15; offset <= 0.151; offset += ACROSS_STEP_MM) {
                highest = Math.max(
                        highest, ink.at(point.x() + across.x() * offset, point.y() + across.y() * offset));
            }
            peaks[profile] = highest;
        }
        return peaks;
    }

    private void measure(
            Line line, double half, double sigma, List<Line> others, double[] centre, double[] mass) {
        Vector across = line.direction().leftNormal();
        int reach = (int) Math.ceil(2.5 * sigma / ACROSS_STEP_MM);
        double[] window = new double[2 * reach + 1];
        for (int k = -reach; k <= reach; k++) {
            double offset = k * ACROSS_STEP_MM;
            window[k + reach] = Math.exp(-offset * offset / (2 * sigma * sigma));
        }
        for (int profile = 0; profile < centre.length; profile++) {
            Point point = line.pointAt(-half + (profile + 0.5) * 2 * half / centre.length);
            if (others.stream().anyMatch(other -> Math.abs(other.distanceTo(point)) < OTHER_LINE_MM)) {
                mass[profile] = 0;
                continue;
            }
            double sum = 0;
            double moment = 0;
            for (int k = -reach; k <= reach; k++) {
                double offset = k * ACROSS_STEP_MM;
                double value = ink.at(point.x() + across.x() * offset, point.y() + across.y() * offset);
                if (value < 8) {
                    continue;
                }
                sum += value * window[k + reach];
                moment += value * window[k + reach] * offset;
            }
            mass[profile] = sum * ACROSS_STEP_MM;
            // A window lying on the edge of a line sees its centre drawn half-way in; the factor undoes most of it.
            centre[profile] = sum == 0 ? 0 : 1.4 * moment / sum;
        }
    }

    private record Solution(double offset, double slope, double residual, int inked) {}

    private Solution solve(double[] centre, double[] mass, double half, double doubtDegrees) {
        double[] sorted = mass.clone();
        Arrays.sort(sorted);
        double usual = sorted[(int) (sorted.length * 0.6)];
        double floor = Math.max(0.25 * usual, 0.02 * outlineInk);
        double perProfile = 2 * half / centre.length / CORRELATION_MM;
        double pull = 0.06 * 0.06 / Math.pow(Math.tan(Math.toRadians(doubtDegrees)), 2) / perProfile;
        double[] along = new double[centre.length];
        double[] weights = new double[centre.length];
        int inked = 0;
        for (int profile = 0; profile < centre.length; profile++) {
            along[profile] = -half + (profile + 0.5) * 2 * half / centre.length;
            if (mass[profile] >= floor) {
                weights[profile] = Math.min(1, mass[profile] / Math.max(usual, 1e-9));
                inked++;
            }
        }
        if (inked < 3) {
            return new Solution(0, 0, 0.2, inked);
        }
        HuberLine line = HuberLine.through(along, centre, weights, HUBER_MM, pull);
        return new Solution(line.offset(), line.slope(), line.residual(), inked);
    }
}
