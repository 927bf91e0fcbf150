package wallplate.measure;

import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/**
 * Tells apart two lines drawn over one another a few tenths of a millimetre beside: one of them is also seen alone
 * further on, so its own ink is known and can be taken away from what both together left.
 */
final class Overdrawn {

    private static final double STEP_MM = 0.05;
    private static final int REACH = 16;

    private Overdrawn() {}

    /**
     * The hidden line's place.
     *
     * @param together the fit to the ink of both lines
     * @param known the line that runs on alone
     * @param aloneFrom from which place along the known line's direction it is alone, to its end or 25 mm further
     * @return the hidden edge; {@code together} itself, with a larger uncertainty, where too little ink is left
     */
    static Edge below(DrawingView view, Edge together, Edge known, double aloneFrom) {
        double end = Math.min(aloneFrom + 25, known.segment().end().x() - 1);
        if (end < aloneFrom + 3) {
            return together;
        }
        double[] alone = profile(view, known.line(), known.line().positionOf(at(known, aloneFrom)),
                known.line().positionOf(at(known, end)));
        double[] both = profile(view, known.line(),
                known.line().positionOf(together.segment().start()), known.line().positionOf(together.segment().end()));
        return solve(together, known, alone, both);
    }

    private static Point at(Edge edge, double x) {
        return new Point(x, edge.yAt(x));
    }

    /** Mean ink across a line, from left to right of it, over a piece of it. */
    private static double[] profile(DrawingView view, Line line, double from, double to) {
        double[] profile = new double[2 * REACH + 1];
        Vector across = line.direction().leftNormal();
        int samples = Math.max(5, (int) Math.round(Math.abs(to - from) / 0.1));
        for (int sample = 0; sample < samples; sample++) {
            Point point = line.pointAt(from + (sample + 0.5) * (to - from) / samples);
            for (int k = -REACH; k <= REACH; k++) {
                profile[k + REACH] +=
                        view.ink().at(point.x() + across.x() * k * STEP_MM, point.y() + across.y() * k * STEP_MM) / samples;
            }
        }
        return profile;
    }

    private static Edge solve(Edge together, Edge known, double[] alone, double[] both) {
        double bestError = Double.MAX_VALUE;
        double bestShift = 0;
        double errorAtZero = 0;
        // The hidden line is as broad and dark as the known one, within a factor: its shift and factor are searched.
        for (double shift = -0.6; shift <= 0.6001; shift += 0.02) {
            for (double factor = 0.5; factor <= 1.3; factor += 0.1) {
                double error = 0;
                for (int k = -REACH; k <= REACH; k++) {
                    double hidden = factor * at(alone, k - shift / STEP_MM);
                    double seen = alone[k + REACH];
                    // Graphite over graphite darkens less than the sum of both.
                    double model = seen + hidden * (1 - 0.6 * seen / 255);
                    double off = both[k + REACH] - model;
                    error += off * off;
                }
                if (error < bestError) {
                    bestError = error;
                    bestShift = shift;
                }
                if (Math.abs(shift) < 0.01) {
                    errorAtZero = errorAtZero == 0 ? error : Math.min(errorAtZero, error);
                }
            }
        }
        Line line = known.line().offset(bestShift);
        double from = line.positionOf(together.segment().start());
        double to = line.positionOf(together.segment().end());
        double sigma = 0.05 + 0.3 * Math.abs(bestShift) * Math.sqrt(bestError / Math.max(errorAtZero, 1e-9));
        return new Edge(line, from, to, sigma, together.residualMm(), together.ink(), together.coverage());
    }

    private static double at(double[] profile, double k) {
        double index = k + REACH;
        int low = (int) Math.floor(index);
        if (low < 0 || low + 1 >= profile.length) {
            return 0;
        }
        double part = index - low;
        return profile[low] * (1 - part) + profile[low + 1] * part;
    }
}
