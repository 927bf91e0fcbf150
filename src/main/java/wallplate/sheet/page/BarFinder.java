package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * Finds the reference bar by its shape: a line with a short upright tick at either end, standing alone near the sheet's
 * lower edge.
 */
public final class BarFinder {

    /** How far a bar's rough length may be from the nominal one where the rough scale is a guess. */
    public static final double GUESSED_SCALE = 0.09;
    /** The same where the paper's edges or a stated resolution give the rough scale: a ruler read wrongly. */
    public static final double KNOWN_SCALE = 0.045;

    /** A soft pencil's line is found in pieces; one of them is at least this share of the bar. */
    private static final double LEAST_PIECE = 0.25;

    /** What a line may be longer than the bar drawn on it, in millimetres. */
    private static final double OVERSHOOT = 20;

    private static final double STEP = 0.125;
    private static final double TICK_NEAR = 0.8;
    private static final double TICK_FAR = 1.9;
    /** Ink, from 0 to 255, that counts as a line; a faint construction line has about this. */
    private static final double INK = 26;

    /** The share of the column beside the line that a tick inks. */
    private static final double LEAST_TICK = 0.6;
    private static final double WIDEST_TICK = 1.3;

    private static final double TICK_SEARCH = 1.6;
    private static final double LONGEST_TICK = 9;
    private static final double BEYOND_NEAR = 1.2;
    private static final double BEYOND_FAR = 4.5;
    private static final double BEYOND_LINE = 2.8;
    private static final double LEAST_BETWEEN = 0.6;
    private static final double MOST_BEYOND = 0.5;
    /** A bar's line reaches both its ticks: the last millimetres before a tick, and the least share of them with ink. */
    private static final double LAST = 4;

    private static final double LEAST_LAST = 0.5;
    /** What a bar is worth that ends at a line which runs on, such as a title block's side. */
    private static final double ENDS_AT_LINE = 0.65;
    /** So near the bar's line, in millimetres, its own ink lies on one side of a tick that stands on it. */
    private static final double BAR_INK = 0.45;
    /** How far off square a tick is drawn, and how far off its place a pencil wavers, as one standard deviation. */
    private static final double TICK_ASKEW = 0.02;

    private static final double TICK_WAVER = 0.04;

    private final InkImage ink;
    private final LineRefit refit;
    private final double nominal;
    private final double tolerance;

    /**
     * @param nominal the length that the bar should have
     * @param tolerance the share of that length by which it may differ in rough millimetres
     */
    public BarFinder(InkImage ink, LineRefit refit, double nominal, double tolerance) {
        this.ink = ink;
        this.refit = refit;
        this.nominal = nominal;
        this.tolerance = tolerance;
    }

    /**
     * A line with two ticks.
     *
     * @param segment between the ticks' centre lines, on the bar's own centre line
     * @param shape how much it looks like a bar, from 0 to 1
     * @param deviation one standard deviation of the length as measured
     */
    public record Bar(Segment segment, double shape, double deviation) {}

    /** Every line among these that could be the bar, most likely shape first. */
    public List<Bar> among(List<Fitted> lines) {
        return among(lines, nominal * (1 + tolerance) + OVERSHOOT);
    }

    /** Also lines that run on beyond the bar: a title block's line in one line with it looks like its continuation. */
    public List<Bar> amongJoined(List<Fitted> lines) {
        return among(lines, Double.MAX_VALUE);
    }

    private List<Bar> among(List<Fitted> lines, double longest) {
        List<Bar> bars = new ArrayList<>();
        for (Fitted line : lines) {
            if (line.segment().length() > LEAST_PIECE * nominal && line.segment().length() < longest) {
                onLine(line).ifPresent(bars::add);
            }
        }
        bars.sort(Comparator.comparingDouble((Bar bar) -> bar.shape).reversed());
        return bars;
    }

    private Optional<Bar> onLine(Fitted fitted) {
        Segment rough = fitted.segment();
        Line line = rough.line();
        double from = -(1 - LEAST_PIECE) * nominal;
        double to = rough.length() + (1 - LEAST_PIECE) * nominal;
        List<Tick> ticks = ticks(line, from, to);
        Bar best = null;
        for (Tick left : ticks) {
            for (Tick right : ticks) {
                double length = right.position - left.position;
                if (Math.abs(length - nominal) > tolerance * nominal) {
                    continue;
                }
                double shape = shape(line, left, right);
                if (shape > 0.3 && (best == null || shape > best.shape)) {
                    best = measured(line, left, right, shape).orElse(best);
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private record Tick(double position, double strength, double above, double below) {}

    /** Places along the line where ink stands up from it, narrow along the line. */
    private List<Tick> ticks(Line line, double from, double to) {
        int count = (int) ((to - from) / STEP);
        double[] above = new double[count];
        double[] below = new double[count];
        for (int i = 0; i < count; i++) {
            above[i] = column(line, from + i * STEP, 1);
            below[i] = column(line, from + i * STEP, -1);
        }
        List<Tick> ticks = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (Math.max(above[i], below[i]) < LEAST_TICK || !isPeak(above, below, i)) {
                continue;
            }
            double up = isNarrow(above, i) ? above[i] : 0;
            double down = isNarrow(below, i) ? below[i] : 0;
            if (Math.max(up, down) >= LEAST_TICK) {
                ticks.add(new Tick(from + i * STEP, up + down, up, down));
            }
        }
        return ticks;
    }

    /** A tick is; on one side of the bar it may stand beside the title block's edge and look wide. */
    private static boolean isNarrow(double[] side, int i) {
        return widthAround(side, i) <= WIDEST_TICK;
    }

    private static boolean isPeak(double[] above, double[] below, int i) {
        double here = above[i] + below[i];
        int reach = (int) (0.5 / STEP);
        for (int k = Math.max(0, i - reach); k <= Math.min(above.length - 1, i + reach); k++) {
            double other = above[k] + below[k];
            if (other > here || (other == here && k < i)) {
                return false;
            }
        }
        return true;
    }

    private static double widthAround(double[] side, int i) {
        int low = i;
        int high = i;
        while (low > 0 && side[low - 1] > 0.5) {
            low--;
        }
        while (high + 1 < side.length && side[high + 1] > 0.5) {
            high++;
        }
        return (high - low + 1) * STEP;
    }

    /** The share of a short upright column beside the line that is inked. */
    private double column(Line line, double position, int side) {
        Point foot = line.pointAt(position);
        Vector up = line.direction().leftNormal().times(side);
        int inked = 0;
        int count = 0;
        for (double height = TICK_NEAR; height <= TICK_FAR; height += STEP) {
            count++;
            Point at = foot.plus(up.times(height));
            if (ink.at(at.x(), at.y()) > INK) {
                inked++;
            }
        }
        return (double) inked / count;
    }

    private double shape(Line line, Tick left, Tick right) {
        double between = coverage(line, left.position + 0.5, right.position - 0.5, 0);
        double last = Math.min(
                coverage(line, left.position + 0.5, left.position + LAST, 0),
                coverage(line, right.position - LAST, right.position - 0.5, 0));
        if (between < LEAST_BETWEEN || last < LEAST_LAST) {
            return 0;
        }
        boolean leftRunsOn = runsOn(line, left);
        boolean rightRunsOn = runsOn(line, right);
        double beyond = Math.max(beyond(line, left, -1, leftRunsOn), beyond(line, right, 1, rightRunsOn));
        if (leftRunsOn && rightRunsOn || beyond > MOST_BEYOND) {
            return 0;
        }
        double ends = leftRunsOn || rightRunsOn ? ENDS_AT_LINE : 1;
        double ticks = (Math.min(2, left.strength) + Math.min(2, right.strength)) / 4;
        double arrows = (arrow(line, left.position, 1) + arrow(line, right.position, -1)) / 2;
        double alone = 1 - clutter(line, left.position, right.position);
        double close = 1 - Math.abs(right.position - left.position - nominal) / (tolerance * nominal) * 0.3;
        return between
                * (1 - beyond)
                * (0.6 + 0.4 * ticks)
                * (1 - 0.4 * arrows)
                * (0.4 + 0.6 * alone)
                * close
                * ends;
    }

    /** The share of the line's continuation that is inked; behind a title block's side lettering is none. */
    private double beyond(Line line, Tick tick, int outwards, boolean runsOn) {
        double near = tick.position + outwards * BEYOND_NEAR;
        double far = tick.position + outwards * (runsOn ? BEYOND_LINE : BEYOND_FAR);
        return coverage(line, Math.min(near, far), Math.max(near, far), 0);
    }

    /** Whether what stands up at the tick is no tick but a line that runs on, such as a frame's. */
    private boolean runsOn(Line line, Tick tick) {
        return runsOn(line, tick.position, 1) || runsOn(line, tick.position, -1);
    }

    private boolean runsOn(Line line, double position, int side) {
        Point foot = line.pointAt(position);
        Vector up = line.direction().leftNormal().times(side);
        int inked = 0;
        int count = 0;
        for (double height = TICK_NEAR; height <= LONGEST_TICK + 3; height += STEP) {
            count++;
            if (darkestAround(foot.plus(up.times(height)), line.direction()) > INK) {
                inked++;
            }
        }
        return inked > 0.93 * count;
    }

    private double coverage(Line line, double from, double to, double offset) {
        int inked = 0;
        int count = 0;
        Vector up = line.direction().leftNormal();
        for (double position = from; position <= to; position += STEP) {
            Point centre = line.pointAt(position).plus(up.times(offset));
            count++;
            double darkest = 0;
            for (double beside = -0.25; beside <= 0.25; beside += 0.25) {
                Point at = centre.plus(up.times(beside));
                darkest = Math.max(darkest, ink.at(at.x(), at.y()));
            }
            if (darkest > INK) {
                inked++;
            }
        }
        return count == 0 ? 0 : (double) inked / count;
    }

    /** Whether an arrowhead spreads from the tick into the line, as on dimension lines: 0 none, 1 both barbs. */
    private double arrow(Line line, double tick, int inwards) {
        Vector up = line.direction().leftNormal();
        int barbs = 0;
        for (int side = -1; side <= 1; side += 2) {
            double darkest = 0;
            for (double distance = 1.2; distance <= 2.6; distance += STEP) {
                for (double height = 0.6; height <= 0.9; height += STEP) {
                    Point at = line.pointAt(tick + inwards * distance).plus(up.times(side * height));
                    darkest = Math.max(darkest, ink.at(at.x(), at.y()));
                }
            }
            if (darkest > INK) {
                barbs++;
            }
        }
        return barbs / 2.0;
    }

    /** How much of the strips above and below the bar, between its ticks, is inked by other lines. */
    private double clutter(Line line, double left, double right) {
        double worst = 0;
        for (double height : new double[] {-5, -3.5, -2, 2, 3.5, 5}) {
            worst = Math.max(worst, coverage(line, left + 3, right - 3, height));
        }
        return worst;
    }

    private Optional<Bar> measured(Line line, Tick left, Tick right, double shape) {
        Segment rough = line.between(left.position + 0.6, right.position - 0.6);
        Optional<Fitted> bar = refit.fit(rough);
        Optional<Fitted> first = tickLine(line, left);
        Optional<Fitted> second = tickLine(line, right);
        if (bar.isEmpty() || first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        Line axis = bar.get().segment().line();
        Optional<Point> start = axis.intersection(centreLine(first.get(), axis), 0.5);
        Optional<Point> end = axis.intersection(centreLine(second.get(), axis), 0.5);
        if (start.isEmpty() || end.isEmpty()) {
            return Optional.empty();
        }
        double ticks = Math.hypot(tickDeviation(first.get()), tickDeviation(second.get()));
        return Optional.of(new Bar(new Segment(start.get(), end.get()), shape, ticks));
    }

    private static double tickDeviation(Fitted tick) {
        return 0.02 + tick.residual() / Math.sqrt(Math.max(1, tick.segment().length()));
    }

    /** A short tick's direction is known less well than that ticks stand square to their bar. */
    private static Line centreLine(Fitted tick, Line axis) {
        Segment fitted = tick.segment();
        double askew = TICK_WAVER / fitted.length();
        double trust = TICK_ASKEW * TICK_ASKEW / (TICK_ASKEW * TICK_ASKEW + askew * askew);
        Vector along = fitted.vector().unit();
        Vector square = axis.direction().leftNormal();
        Vector upwards = along.dot(square) < 0 ? along.negated() : along;
        Vector direction = upwards.times(trust).plus(square.times(1 - trust));
        return Line.through(fitted.midpoint(), fitted.midpoint().plus(direction));
    }

    /** The tick's own centre line, over as much of it as is inked on either side of the bar. */
    private Optional<Fitted> tickLine(Line line, Tick tick) {
        double above = tick.above > 0.5 ? reach(line, tick.position, 1) : -BAR_INK;
        double below = tick.below > 0.5 ? reach(line, tick.position, -1) : -BAR_INK;
        Point foot = line.pointAt(tick.position);
        Vector up = line.direction().leftNormal();
        return refit.fit(new Segment(foot.plus(up.times(-below)), foot.plus(up.times(above))));
    }

    private double reach(Line line, double position, int side) {
        Point foot = line.pointAt(position);
        Vector up = line.direction().leftNormal().times(side);
        double height = TICK_SEARCH;
        while (height < 5 && darkestAround(foot.plus(up.times(height + STEP)), line.direction()) > INK) {
            height += STEP;
        }
        return Math.max(1, height - 0.25);
    }

    private double darkestAround(Point point, Vector along) {
        double darkest = 0;
        for (double beside = -0.25; beside <= 0.25; beside += 0.25) {
            Point at = point.plus(along.times(beside));
            darkest = Math.max(darkest, ink.at(at.x(), at.y()));
        }
        return darkest;
    }
}
