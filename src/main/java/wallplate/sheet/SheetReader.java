package wallplate.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.opencv.InkFlattening;
import wallplate.sheet.opencv.PageWarp;
import wallplate.sheet.opencv.StraightSegments;
import wallplate.sheet.page.AxisLines;
import wallplate.sheet.page.BarFinder;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.FrameLines;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.LevelDirection;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.PageMap;
import wallplate.task.SheetFormat;

/**
 * Makes a level page in true millimetres of a page as it was handed in, or refuses it with a reason.
 *
 * <p>It keeps nothing between pages and may be used by several threads at once.
 */
public final class SheetReader {

    private static final double ROUGH_PIXELS_PER_MM = 4;
    private static final double LEVEL_PIXELS_PER_MM = 10;

    /** Reads one page that is expected to be a sheet of the given format. */
    public SheetReading read(ScanPage page, SheetFormat format) {
        if (page.content() instanceof Refused refused) {
            return new SheetReading.Unreadable(refused.reason());
        }
        return read((Picture) page.content(), format);
    }

    private SheetReading read(Picture picture, SheetFormat format) {
        double longer = Math.max(picture.widthPx(), picture.heightPx());
        double pixelsPerMm = longer / Math.max(format.widthMm(), format.heightMm());
        double x = plausible(picture.dpiX() / 25.4, pixelsPerMm) ? picture.dpiX() / 25.4 : pixelsPerMm;
        double y = plausible(picture.dpiY() / 25.4, pixelsPerMm) ? picture.dpiY() / 25.4 : x;
        PageMap rough = PageMap.affine(x, 0, 0, 0, -y, picture.heightPx());
        double width = picture.widthPx() / x;
        double height = picture.heightPx() / y;
        GreyPage grey = PageWarp.warp(picture, rough, width, height, ROUGH_PIXELS_PER_MM, 255);
        InkImage ink = InkFlattening.flatten(grey);
        List<Segment> segments = StraightSegments.find(
                new GreyPage(ink.widthPx(), ink.heightPx(), ink.pixelsPerMm(), ink.bytes()));
        LineRefit refit = new LineRefit(picture, rough);
        Optional<AxisLines> found = AxisLines.among(segments, refit);
        if (found.isEmpty()) {
            return new SheetReading.Unreadable("There is no drawing on this page.");
        }
        AxisLines lines = found.get();
        AxisLines drawn = new FrameLines(width, height).without(lines);
        BarFinder finder = new BarFinder(ink, refit, format.referenceBarMm());
        List<Placed> bars = new ArrayList<>();
        finder.among(drawn.alongX()).forEach(bar -> bars.add(Placed.of(bar, width, height)));
        finder.among(drawn.alongY()).forEach(bar -> bars.add(Placed.of(bar, width, height)));
        bars.sort(Comparator.comparingDouble(Placed::score).reversed());
        if (bars.isEmpty()) {
            return new SheetReading.Unreadable("No reference bar was found on this page.");
        }
        Placed bar = bars.get(0);
        LevelDirection level = LevelDirection.of(drawn.alongX(), drawn.alongY(), drawn.tiltDegrees());
        double turn = level.tiltDegrees() + bar.quarterTurns() * 90;
        double scale = format.referenceBarMm() / bar.bar().segment().length();
        return levelled(picture, rough, width, height, turn, level.tiltDegrees(), scale, bar.bar(), format);
    }

    private static boolean plausible(double stated, double filled) {
        return stated > 0.7 * filled && stated < 1.3 * filled;
    }

    private record Placed(Bar bar, int quarterTurns, double score) {

        static Placed of(Bar bar, double width, double height) {
            Point middle = bar.segment().midpoint();
            boolean along = Math.abs(bar.segment().vector().x()) > Math.abs(bar.segment().vector().y());
            double low = along ? middle.y() : width - middle.x();
            double high = along ? height - middle.y() : middle.x();
            int turns = (along ? 0 : 1) + (low <= high ? 0 : 2);
            double below = Math.min(low, high);
            double place = below < 55 ? 1 : 0.3;
            return new Placed(bar, turns, bar.shape() * place);
        }
    }

    private static SheetReading levelled(
            Picture picture,
            PageMap rough,
            double width,
            double height,
            double turnDegrees,
            double tiltDegrees,
            double scale,
            Bar bar,
            SheetFormat format) {
        Vector right = Vector.atDegrees(turnDegrees).times(1 / scale);
        Vector up = right.leftNormal();
        double left = Double.MAX_VALUE, bottom = Double.MAX_VALUE, most = -Double.MAX_VALUE, top = -Double.MAX_VALUE;
        for (Point corner : List.of(
                new Point(0, 0), new Point(width, 0), new Point(width, height), new Point(0, height))) {
            Vector v = corner.minus(Point.ORIGIN);
            double lx = v.dot(right) * scale * scale;
            double ly = v.dot(up) * scale * scale;
            left = Math.min(left, lx);
            most = Math.max(most, lx);
            bottom = Math.min(bottom, ly);
            top = Math.max(top, ly);
        }
        PageMap toRough = PageMap.affine(
                right.x(),
                up.x(),
                right.x() * left + up.x() * bottom,
                right.y(),
                up.y(),
                right.y() * left + up.y() * bottom);
        PageMap toScan = rough.after(toRough);
        GreyPage grey = PageWarp.warp(picture, toScan, most - left, top - bottom, LEVEL_PIXELS_PER_MM, 255);
        InkImage ink = InkFlattening.flatten(grey);
        Segment onPage = toRough.inverse().apply(bar.segment());
        if (onPage.vector().x() < 0) {
            onPage = onPage.reversed();
        }
        double uncertainty = 100 * Math.hypot(bar.deviation(), 0.12) / format.referenceBarMm();
        Calibration calibration =
                new Calibration(Calibration.Source.REFERENCE_BAR, format.referenceBarMm(), uncertainty, 0.3);
        LevelPage page = new LevelPage(
                ink,
                toScan,
                toScan.pixelsPerMmAt(new Point((most - left) / 2, (top - bottom) / 2)),
                tiltDegrees,
                false,
                calibration,
                Optional.of(onPage),
                List.of());
        return new SheetReading.Readable(page);
    }
}
