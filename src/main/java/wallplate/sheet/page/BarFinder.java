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

    /** A soft pencil's line is found in pieces; one of them is at least this share of the bar. */
    private static final double LEAST_PIECE = 0.25;

    /** Two ticks make no bar below this. */
    private static final double LEAST_SHAPE = 0.3;
    /** From this share of the likeliest shape another reading may be right. */
    private static final double FAIRLY_LIKELY = 0.5;

    /** What a line may be longer than the bar drawn on it, in millimetres. */
    private static final double OVERSHOOT = 20;

    private static final double STEP = 0.125;
    private static final double TICK_NEAR = 0.8;
    private static final double TICK_FAR = 1.9;
    /** Ink, from 0 to 255, that counts as a line; a faint construction line has about this. */
    private static final double INK = 26;

    /** The share of the column beside the line that a tick inks. */
    private static final double LEAST_TICK = 0.6;
    private static final double WIDEST_TICK = 1.8;

    /** Where there is less than this part of a line's ink beside it, the line has ended. */
    private static final double GAP_PART = 0.3;

    private static final double TICK_SEARCH = 1.6;
    private static final double LONGEST_TICK = 9;
    private static final double BEYOND_NEAR = 1.2;
    private static final double BEYOND_FAR = 4.5;
    private static final double BEYOND_LINE = 2.8;
    private static final double LEAST_BETWEEN = 0.6;
    /** More ink than this share behind a tick is a line that runs on, or lettering. */
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

    /** So near a line of the frame, in millimetres, what runs along the bar is that line. */
    private static final double AT_FRAME = 1.5;

    private final InkImage ink;
    private final LineRefit refit;
    private final BarLength length;
    private final List<Segment> frame;

    /**
     * @param frame the lines of the sheet's frame, whole or in pieces: a bar that is drawn close to one still stands alone
     */
    public BarFinder(InkImage ink, LineRefit refit, BarLength length, List<Segment> frame) {
        this.ink = ink;
        this.refit = refit;
        this.length = length;
        this.frame = List.copyOf(frame);
    }

    /**
     * A line with two ticks.
     *
     * @param segment between the ticks' centre lines, on the bar's own centre line
     * @param shape how much the line looks like a bar, from 0 to 1, by its likeliest ticks
     * @param deviation one standard deviation of the length as measured, with what other ticks on the line leave open
     */
    public record Bar(Segment segment, double shape, double deviation) {}

    /** Two ticks between which the line could be the bar. */
    private record TickPair(Tick left, Tick right, double shape, boolean alone) {}

    /** A bar between two ticks, and whether nothing follows behind them. */
    private record BarReading(Bar bar, boolean alone) {}

    /** Every line among these that could be the bar, most likely shape first. */
    public List<Bar> among(List<Fitted> lines) {
        return among(lines, length.nominalMm() + length.longestDifference() + OVERSHOOT);
    }

    /** Also lines that run on beyond the bar: a title block's line in one line with it looks like its continuation. */
    public List<Bar> amongJoined(List<Fitted> lines) {
        return among(lines, Double.MAX_VALUE);
    }

    private List<Bar> among(List<Fitted> lines, double longest) {
        List<Bar> bars = new ArrayList<>();
        for (Fitted line : lines) {
            if (line.segment().length() > LEAST_PIECE * length.nominalMm() && line.segment().length() < longest) {
                onLine(line).ifPresent(bars::add);
            }
        }
        bars.sort(Comparator.comparingDouble((Bar bar) -> bar.shape).reversed());
        return bars;
    }

    private Optional<Bar> onLine(Fitted fitted) {
        Segment rough = fitted.segment();
        Line line = rough.line();
        double around = (1 - LEAST_PIECE) * length.nominalMm();
        List<BarReading> readings = pairs(line, ticks(line, -around, rough.length() + around)).stream()
                .flatMap(pair -> measured(line, pair).map(bar -> new BarReading(bar, pair.alone)).stream())
                .toList();
        return readings.stream().filter(BarReading::alone).findFirst().map(first -> likeliest(first.bar, readings));
    }

    /**
     * Ticks as far apart as a bar's, most likely shape first; none where there is ink behind each, as behind a tick of a line
     * that runs on.
     */
    private List<TickPair> pairs(Line line, List<Tick> ticks) {
        List<TickPair> pairs = new ArrayList<>();
        for (Tick left : ticks) {
            for (Tick right : ticks) {
                if (length.isPossible(right.position - left.position)) {
                    Ends ends = ends(line, left, right);
                    pairs.add(new TickPair(left, right, shape(line, left, right, ends), ends.beyond <= MOST_BEYOND));
                }
            }
        }
        pairs.removeIf(pair -> pair.shape <= LEAST_SHAPE);
        pairs.sort(Comparator.comparingDouble(TickPair::shape).reversed());
        return pairs.stream().anyMatch(TickPair::alone) ? pairs : List.of();
    }

    /**
     * The likeliest reading with nothing behind its ticks, unless the page's scale, as far as it is known, bears out another
     * that is fairly likely: a bar that was drawn into the title block ends in its lettering, and a letter's stem looks like a
     * tick. Only the paper's own size is trusted so far that what it does not bear out is no longer thought possible.
     */
    private Bar likeliest(Bar first, List<BarReading> readings) {
        Bar chosen = readings.stream()
                .map(BarReading::bar)
                .filter(bar -> bar.shape > FAIRLY_LIKELY * first.shape && length.isBorneOut(bar.segment.length()))
                .findFirst()
                .orElse(first);
        List<Bar> rivals = readings.stream()
                .map(BarReading::bar)
                .filter(bar -> bar != chosen && bar.shape > FAIRLY_LIKELY * chosen.shape)
                .filter(bar -> isBorneOutByPaper(bar) || !isBorneOutByPaper(chosen))
                .toList();
        return new Bar(chosen.segment, first.shape, Math.hypot(chosen.deviation, spread(chosen, rivals)));
    }

    private boolean isBorneOutByPaper(Bar bar) {
        return length.isBorneOutByPaper(bar.segment.length());
    }

    /** How far off the chosen length may be where rivals may be right instead, as one standard deviation. */
    private static double spread(Bar chosen, List<Bar> rivals) {
        double squares = 0;
        double shapes = chosen.shape;
        for (Bar rival : rivals) {
            double apart = rival.segment.length() - chosen.segment.length();
            squares += rival.shape * apart * apart;
            shapes += rival.shape;
        }
        return Math.sqrt(squares / shapes);
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

    /** The first of the darkest places of a line; what lies behind a gap is another line, such as a title block's side. */
    private static boolean isPeak(double[] above, double[] below, int i) {
        double here = above[i] + below[i];
        int reach = (int) (0.5 / STEP);
        for (int way = -1; way <= 1; way += 2) {
            for (int k = i + way; k >= 0 && k < above.length && Math.abs(k - i) <= reach; k += way) {
                double other = above[k] + below[k];
                if (other < GAP_PART * here) {
                    break;
                }
                if (other > here || (other == here && k < i)) {
                    return false;
                }
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

    /**
     * What is at the ends of a possible bar.
     *
     * @param runOn how many of its ticks belong to lines that run on
     * @param beyond the share of the line's continuation that is inked, at the worse end
     */
    private record Ends(int runOn, double beyond) {}

    private Ends ends(Line line, Tick left, Tick right) {
        boolean leftRunsOn = runsOn(line, left);
        boolean rightRunsOn = runsOn(line, right);
        double beyond = Math.max(beyond(line, left, -1, leftRunsOn), beyond(line, right, 1, rightRunsOn));
        return new Ends((leftRunsOn ? 1 : 0) + (rightRunsOn ? 1 : 0), beyond);
    }

    private double shape(Line line, Tick left, Tick right, Ends ends) {
        double between = coverage(line, left.position + 0.5, right.position - 0.5, 0);
        double last = Math.min(
                coverage(line, left.position + 0.5, left.position + LAST, 0),
                coverage(line, right.position - LAST, right.position - 0.5, 0));
        if (between < LEAST_BETWEEN || last < LEAST_LAST || ends.runOn == 2) {
            return 0;
        }
        double ticks = (Math.min(2, left.strength) + Math.min(2, right.strength)) / 4;
        double arrows = (arrow(line, left.position, 1) + arrow(line, right.position, -1)) / 2;
        double alone = 1 - clutter(line, left.position, right.position);
        double off = Math.abs(right.position - left.position - length.nominalMm());
        double close = 1 - off / length.longestDifference() * 0.3;
        return between
                * (1 - Math.min(MOST_BEYOND, ends.beyond))
                * (0.6 + 0.4 * ticks)
                * (1 - 0.4 * arrows)
                * (0.4 + 0.6 * alone)
                * close
                * (ends.runOn == 1 ? ENDS_AT_LINE : 1);
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

    /** How much of the strips above and below the bar, between its ticks, is inked by other lines than the frame's. */
    private double clutter(Line line, double left, double right) {
        Point middle = line.pointAt((left + right) / 2);
        Vector up = line.direction().leftNormal();
        double worst = 0;
        for (double height : new double[] {-5, -3.5, -2, 2, 3.5, 5}) {
            Point strip = middle.plus(up.times(height));
            if (frame.stream().noneMatch(side -> Math.abs(side.line().distanceTo(strip)) < AT_FRAME)) {
                worst = Math.max(worst, coverage(line, left + 3, right - 3, height));
            }
        }
        return worst;
    }

    private Optional<Bar> measured(Line line, TickPair pair) {
        Segment rough = line.between(pair.left.position + 0.6, pair.right.position - 0.6);
        Optional<Fitted> bar = refit.fit(rough);
        Optional<Fitted> first = tickLine(line, pair.left);
        Optional<Fitted> second = tickLine(line, pair.right);
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
        return Optional.of(new Bar(new Segment(start.get(), end.get()), pair.shape, ticks));
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
