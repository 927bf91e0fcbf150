package wallplate.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.Calibration.Source;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.opencv.PageWarp;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.PageMap;

/**
 * The millimetres of a level page taken anew, from both ticks of the reference bar as a person showed them.
 *
 * <p>A person points to a tick within a millimetre or so; the tick's own ink near that place gives its centre line. Where
 * no ink stands there, the place itself is taken, and known less well. The first tick is the one that should be on the
 * left: ticks shown in another direction turn the page by quarter turns. Within a quarter turn the page stays as level
 * as its own long lines made it, because they tell the level better than one bar does.
 */
public final class BarByHand {

    /** How far from the place that was shown a tick is looked for. */
    private static final double TICK_SEARCH = 1.5;

    private static final double SEARCH_STEP = 0.05;
    /** Half the length of the column of ink that speaks for a tick; ticks are 4 to 8 mm long. */
    private static final double TICK_HALF = 1.6;
    /** Mean ink of a column, from 0 to 255, above which a line stands there; a faint construction line has about this. */
    private static final double TICK_INK = 20;
    /** One standard deviation of a place that a person shows on a screen, where no ink tells it better. */
    private static final double SHOWN = 0.4;
    /** A bar shorter than this on the page as it was read is no bar of any sheet, but a slip of the hand. */
    private static final double SHORTEST = 10;
    /** A page's millimetres may be wrong by this factor; more is a slip of the hand. */
    private static final double MOST_OFF = 4;

    /** The word by which the page reading's own sentences about its bar are known; they no longer hold. */
    private static final String ABOUT_THE_BAR = "reference bar";

    private final LevelPage page;
    private final double barMm;

    private BarByHand(LevelPage page, double barMm) {
        this.page = page;
        this.barMm = barMm;
    }

    /**
     * The page in the millimetres of the bar that was shown.
     *
     * @param page the page as it was read
     * @param left the tick that should be on the left, in the page's millimetres
     * @param right the other tick
     * @param barMm how long the bar really is
     */
    public static Outcome calibrate(LevelPage page, Point left, Point right, double barMm) {
        return new BarByHand(page, barMm).read(left, right);
    }

    /** What came of two places that were shown. */
    public sealed interface Outcome {}

    /**
     * The page in the bar's millimetres.
     *
     * @param fromBefore from the millimetres of the page as it was to its own
     */
    public record Calibrated(LevelPage page, PlaneMap fromBefore) implements Outcome {}

    /**
     * The two places cannot be a bar's ticks.
     *
     * @param reason a sentence with what was found and what to do
     */
    public record Refused(String reason) implements Outcome {}

    /** A tick's centre line or shown place, as a position along the bar, with one standard deviation. */
    private record Tick(Line line, double deviation, boolean seen) {}

    private Outcome read(Point left, Point right) {
        if (isOff(left) || isOff(right)) {
            return new Refused("One of the two places lies outside the sheet. Show both ticks of the bar.");
        }
        double shown = left.distanceTo(right);
        if (shown < SHORTEST || shown > MOST_OFF * barMm || shown < barMm / MOST_OFF) {
            return new Refused(String.format(
                    Locale.ROOT,
                    "The two places lie %.1f mm apart on this sheet; a bar of %.0f mm cannot be that. Show the two ticks at"
                            + " the ends of the bar.",
                    shown,
                    barMm));
        }
        Line axis = Line.through(left, right);
        Tick first = tick(left, axis.direction());
        Tick second = tick(right, axis.direction());
        Point start = axis.intersection(first.line, 0.5).orElse(left);
        Point end = axis.intersection(second.line, 0.5).orElse(right);
        return calibrated(new Segment(start, end), first, second);
    }

    private boolean isOff(Point point) {
        return point.x() < 0
                || point.y() < 0
                || point.x() > page.ink().widthMm()
                || point.y() > page.ink().heightMm();
    }

    /** The tick that stands nearest to the place shown, by its ink; the place itself where there is none. */
    private Tick tick(Point shown, Vector along) {
        Vector up = along.leftNormal();
        double best = 0;
        double at = 0;
        for (double step = -TICK_SEARCH; step <= TICK_SEARCH; step += SEARCH_STEP) {
            double ink = columnInk(shown.plus(along.times(step)), up);
            // Of two lines that are as dark, the nearer one was meant.
            double meant = ink * (1 - 0.3 * Math.abs(step) / TICK_SEARCH);
            if (ink > TICK_INK && meant > best) {
                best = meant;
                at = step;
            }
        }
        if (best == 0) {
            return new Tick(new Line(shown, up), SHOWN, false);
        }
        Point foot = shown.plus(along.times(at));
        Segment rough = new Segment(foot.plus(up.times(-TICK_HALF)), foot.plus(up.times(TICK_HALF)));
        return refit()
                .fit(rough)
                .map(fitted -> new Tick(fitted.segment().line(), 0.02 + fitted.residual(), true))
                .orElseGet(() -> new Tick(new Line(foot, up), SHOWN / 2, true));
    }

    private double columnInk(Point foot, Vector up) {
        double sum = 0;
        int count = 0;
        for (double height = -TICK_HALF; height <= TICK_HALF; height += 0.1) {
            Point point = foot.plus(up.times(height));
            sum += page.ink().at(point.x(), point.y());
            count++;
        }
        return sum / count;
    }

    private LineRefit refit() {
        return new LineRefit(picture(), fromPage());
    }

    /** The page's ink as a picture of pencil on white paper. */
    private Picture picture() {
        byte[] grey = inverted(page.ink().bytes());
        return new Picture(page.ink().widthPx(), page.ink().heightPx(), grey, 0, 0);
    }

    private PageMap fromPage() {
        double scale = page.ink().pixelsPerMm();
        return PageMap.affine(scale, 0, 0, 0, -scale, page.ink().heightPx());
    }

    private static byte[] inverted(byte[] bytes) {
        byte[] other = new byte[bytes.length];
        for (int at = 0; at < bytes.length; at++) {
            other[at] = (byte) (255 - (bytes[at] & 0xff));
        }
        return other;
    }

    private Calibrated calibrated(Segment bar, Tick first, Tick second) {
        double factor = barMm / bar.length();
        double quarter = 90 * Math.round(bar.vector().angleDegrees() / 90);
        Laid laid = Laid.of(page.ink().widthMm(), page.ink().heightMm(), quarter, factor);
        double pixelsPerMm = page.ink().pixelsPerMm();
        GreyPage grey = PageWarp.warp(
                picture(), fromPage().after(laid.toOld), laid.widthMm, laid.heightMm, pixelsPerMm, 255);
        InkImage ink = new InkImage(grey.widthPx(), grey.heightPx(), pixelsPerMm, inverted(grey.grey()));
        double deviation = Math.hypot(Math.hypot(first.deviation, second.deviation) * factor, PageScale.BAR_DRAWN);
        PlaneMap fromBefore = laid.toOld.inverse();
        LevelPage calibrated = new LevelPage(
                ink,
                laid.toOld.then(page.toScan()),
                page.scanPixelsPerMm() / factor,
                page.rotationDegrees(),
                page.photograph(),
                new Calibration(
                        Source.BY_HAND,
                        barMm,
                        100 * deviation / barMm,
                        page.calibration().stretchUncertaintyPercent(),
                        page.calibration().levelUncertaintyDegrees()),
                Optional.of(fromBefore.apply(bar)),
                warnings(first, second),
                page.code(),
                page.cutOff());
        return new Calibrated(calibrated, fromBefore);
    }

    private List<String> warnings(Tick first, Tick second) {
        List<String> warnings = new ArrayList<>(page.warnings());
        warnings.removeIf(warning -> warning.contains(ABOUT_THE_BAR));
        if (!first.seen || !second.seen) {
            warnings.add("No line was seen where a tick of the bar was shown, so the place itself was taken; the sizes"
                    + " are known less well.");
        }
        return warnings;
    }

    /** How the page as it was read lies on the new one: turned by quarter turns and made larger or smaller. */
    private record Laid(PageMap toOld, double widthMm, double heightMm) {

        static Laid of(double oldWidth, double oldHeight, double quarterDegrees, double factor) {
            Vector right = rounded(Vector.atDegrees(quarterDegrees));
            Vector up = right.leftNormal();
            double left = Math.min(0, right.x() * oldWidth) + Math.min(0, right.y() * oldHeight);
            double bottom = Math.min(0, up.x() * oldWidth) + Math.min(0, up.y() * oldHeight);
            Vector origin = right.times(left).plus(up.times(bottom));
            PageMap toOld = PageMap.affine(
                    right.x() / factor, up.x() / factor, origin.x(), right.y() / factor, up.y() / factor, origin.y());
            double width = Math.abs(right.x()) * oldWidth + Math.abs(right.y()) * oldHeight;
            double height = Math.abs(up.x()) * oldWidth + Math.abs(up.y()) * oldHeight;
            return new Laid(toOld, width * factor, height * factor);
        }

        private static Vector rounded(Vector axis) {
            return new Vector(Math.round(axis.x()), Math.round(axis.y()));
        }
    }
}
