package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/**
 * The lines that come to an upright from either side, and the ink that they would leave on it if it were not there: what
 * is darker than that is the upright's own.
 *
 * <p>The line that leaves the most ink is taken first and its ink left out of account, because a dark line is also seen, in
 * part, in directions that it does not run in.
 */
final class PassingLines {

    /** So far beside the upright another line is clear of it, and so far on it is looked at. */
    private static final double CLEAR_MM = 0.45;

    private static final double LENGTH_MM = 2;
    private static final double MOST_ACROSS_MM = 1;
    private static final int SAMPLES = 5;
    /** So many places that belong to no line taken before must show a line. */
    private static final int LEAST_FREE = 2;

    private static final double STEEPEST_DEGREES = 75;
    private static final double TURN_DEGREES = 2.5;
    private static final double STEP_MM = 0.05;
    private static final double THINNEST_MM = 0.125;
    /** What goes on along the upright for longer runs beside it and does not pass it. */
    private static final double BROADEST_MM = 3;

    private static final int MOST_LINES = 6;
    /** A line's flanks fall off within this; the nearer part of them is left out of account with it. */
    private static final double FLANK_MM = 0.4;

    private static final double DARK_FLANK_MM = 0.1;

    /** One line: what it leaves on the upright's middle at each height, and over which heights it is dark. */
    private record Passing(View view, double[] profile, int from, int to) {}

    /** What is seen in one direction on one side: ink by place beside the upright and height. */
    private record View(double rise, int side, double[] offs, double[][] inks, boolean[][] taken) {}

    private record Found(View view, int from, int to, double area) {}

    private final double fromY;
    private final double leastInk;
    private final List<Passing> lines = new ArrayList<>();

    /**
     * The lines that pass an upright between two heights.
     *
     * @param leastInk what a line must leave
     */
    PassingLines(InkImage ink, Edge upright, double fromY, double toY, double leastInk) {
        this.fromY = fromY;
        this.leastInk = leastInk;
        List<View> views = new ArrayList<>();
        for (double degrees = -STEEPEST_DEGREES; degrees <= STEEPEST_DEGREES; degrees += TURN_DEGREES) {
            views.add(view(ink, upright, toY, degrees, -1));
            views.add(view(ink, upright, toY, degrees, 1));
        }
        Optional<Found> strongest = strongest(views);
        while (strongest.isPresent() && lines.size() < MOST_LINES) {
            Found found = strongest.get();
            lines.add(new Passing(found.view, profile(found), found.from, found.to));
            take(found, views);
            strongest = strongest(views);
        }
    }

    /** The ink that other lines leave at a height, off the upright's middle. */
    double inkAt(double off, double y) {
        double most = 0;
        for (Passing line : lines) {
            double at = (y - off * line.view.rise - fromY) / STEP_MM;
            int below = (int) Math.floor(at);
            if (below >= 0 && below + 1 < line.profile.length) {
                double part = at - below;
                most = Math.max(most, (1 - part) * line.profile[below] + part * line.profile[below + 1]);
            }
        }
        return most;
    }

    /** Whether lines come to a height from both sides; one that comes from one side alone ends on the upright. */
    boolean passAt(double y) {
        return comesAt(y, -1) && comesAt(y, 1);
    }

    private boolean comesAt(double y, int side) {
        double reach = 1.5 * DARK_FLANK_MM;
        return lines.stream()
                .anyMatch(line -> line.view.side == side && y >= heightOf(line.from) - reach && y <= heightOf(line.to) + reach);
    }

    private View view(InkImage ink, Edge upright, double toY, double degrees, int side) {
        double rise = Math.tan(Math.toRadians(degrees));
        double across = Math.min(MOST_ACROSS_MM, LENGTH_MM * Math.cos(Math.toRadians(degrees)));
        int heights = Math.max(2, (int) Math.round((toY - fromY) / STEP_MM));
        double[] offs = new double[SAMPLES];
        double[][] inks = new double[SAMPLES][heights];
        for (int sample = 0; sample < SAMPLES; sample++) {
            offs[sample] = side * (CLEAR_MM + across * sample / (SAMPLES - 1));
            for (int at = 0; at < heights; at++) {
                double y = heightOf(at);
                inks[sample][at] = ink.at(upright.xAt(y) + offs[sample], y + offs[sample] * rise);
            }
        }
        return new View(rise, side, offs, inks, new boolean[SAMPLES][heights]);
    }

    private Optional<Found> strongest(List<View> views) {
        Optional<Found> best = Optional.empty();
        for (View view : views) {
            double area = 0;
            int start = 0;
            int heights = view.inks[0].length;
            for (int at = 0; at <= heights; at++) {
                double here = at < heights ? freeInk(view, at) : 0;
                if (here >= leastInk) {
                    area += here;
                    continue;
                }
                double breadth = (at - start) * STEP_MM;
                if (breadth > THINNEST_MM && breadth < BROADEST_MM && area > best.map(Found::area).orElse(0.0)) {
                    best = Optional.of(new Found(view, start, at - 1, area));
                }
                area = 0;
                start = at + 1;
            }
        }
        return best;
    }

    /** The ink of a line that leaves the upright at a height, where no other line was seen; patches of light graphite are allowed for. */
    private static double freeInk(View view, int at) {
        double[] free = new double[SAMPLES];
        int count = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            if (!view.taken[sample][at]) {
                free[count++] = view.inks[sample][at];
            }
        }
        return count < LEAST_FREE ? 0 : evenInk(Arrays.stream(free, 0, count));
    }

    private static double evenInk(DoubleStream inks) {
        double[] values = inks.toArray();
        double least = Arrays.stream(values).min().orElse(0);
        return Math.min(Arrays.stream(values).average().orElse(0), 2 * least);
    }

    /** A line's ink by height, falling off from where it is dark. */
    private static double[] profile(Found found) {
        double[] profile = new double[found.view.inks[0].length];
        for (int at = found.from; at <= found.to; at++) {
            profile[at] = allInk(found.view, at);
        }
        int flank = (int) Math.round(FLANK_MM / STEP_MM);
        for (int at = found.from - 1; at >= Math.max(0, found.from - flank); at--) {
            profile[at] = Math.min(profile[at + 1], allInk(found.view, at));
        }
        for (int at = found.to + 1; at <= Math.min(profile.length - 1, found.to + flank); at++) {
            profile[at] = Math.min(profile[at - 1], allInk(found.view, at));
        }
        return profile;
    }

    private static double allInk(View view, int at) {
        return evenInk(Arrays.stream(view.inks).mapToDouble(inks -> inks[at]));
    }

    /** Leaves a line's ink out of account in all directions on its side. */
    private void take(Found found, List<View> views) {
        double lowY = heightOf(found.from) - DARK_FLANK_MM;
        double highY = heightOf(found.to) + DARK_FLANK_MM;
        for (View view : views) {
            if (view.side != found.view.side) {
                continue;
            }
            for (int sample = 0; sample < SAMPLES; sample++) {
                double shift = view.offs[sample] * (view.rise - found.view.rise);
                for (int at = 0; at < view.taken[sample].length; at++) {
                    double onUpright = heightOf(at) + shift;
                    view.taken[sample][at] |= onUpright >= lowY && onUpright <= highY;
                }
            }
        }
    }

    private double heightOf(int at) {
        return fromY + at * STEP_MM;
    }
}
