package wallplate.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.opencv.InkFlattening;
import wallplate.sheet.opencv.PageWarp;
import wallplate.sheet.opencv.PaperRegion;
import wallplate.sheet.opencv.StraightSegments;
import wallplate.sheet.page.AxisLines;
import wallplate.sheet.page.BarFinder;
import wallplate.sheet.page.BarFinder.Bar;
import wallplate.sheet.page.FrameLines;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.LevelDirection;
import wallplate.sheet.page.LineRefit;
import wallplate.sheet.page.PageMap;
import wallplate.sheet.page.PaperMask;
import wallplate.sheet.page.PaperRectification;
import wallplate.sheet.page.PaperSides;
import wallplate.sheet.page.RoughPage;
import wallplate.task.SheetFormat;

/**
 * Makes a level page in true millimetres of a page as it was handed in, or refuses it with a reason.
 *
 * <p>It keeps nothing between pages and may be used by several threads at once.
 */
public final class SheetReader {

    private static final double ROUGH_PIXELS_PER_MM = 4;
    private static final double LEVEL_PIXELS_PER_MM = 10;
    private static final double EDGE_INSET = 0.8;
    /**
     * A place on the picture's border that differs by this share from the paper's grey is not paper: tried one after
     * another where paper touches the border, in scans of even light and in photographs of uneven light.
     */
    private static final double[] SURROUND_DIFFERENCES = {0.1, 0.25};

    /** Reads one page that is expected to be a sheet of the given format. */
    public SheetReading read(ScanPage page, SheetFormat format) {
        if (page.content() instanceof Refused refused) {
            return new SheetReading.Unreadable(refused.reason());
        }
        Picture picture = (Picture) page.content();
        Optional<RoughPage> rough = rough(picture, format);
        if (rough.isEmpty()) {
            return new SheetReading.Unreadable(
                    "The edges of the sheet cannot be seen in this photograph. Take it again with all four corners of the"
                            + " sheet in the picture, on a darker table.");
        }
        return new Reading(picture, format, rough.get()).read();
    }

    private static Optional<RoughPage> rough(Picture picture, SheetFormat format) {
        double longer = Math.max(format.widthMm(), format.heightMm());
        double shorter = Math.min(format.widthMm(), format.heightMm());
        PaperSides sides = PaperSides.near(PaperRegion.outline(picture, 0), picture);
        for (double difference : SURROUND_DIFFERENCES) {
            if (!sides.complete()) {
                PaperSides again = PaperSides.near(PaperRegion.outline(picture, difference), picture);
                sides = again.count() > sides.count() ? again : sides;
            }
        }
        return new PaperRectification(picture, longer, shorter).rectify(sides);
    }

    /** The reading of one page. */
    private static final class Reading {

        private final Picture picture;
        private final SheetFormat format;
        private final RoughPage rough;
        private final LineRefit refit;

        Reading(Picture picture, SheetFormat format, RoughPage rough) {
            this.picture = picture;
            this.format = format;
            this.rough = rough;
            this.refit = new LineRefit(picture, rough.map());
        }

        SheetReading read() {
            GreyPage grey = PageWarp.warp(
                    picture, rough.map(), rough.widthMm(), rough.heightMm(), ROUGH_PIXELS_PER_MM, 255);
            InkImage ink = InkFlattening.flatten(grey, new PaperMask(rough.paper(), EDGE_INSET));
            List<Segment> segments = StraightSegments.find(
                    new GreyPage(ink.widthPx(), ink.heightPx(), ink.pixelsPerMm(), ink.bytes()));
            Optional<AxisLines> found = AxisLines.among(segments, refit);
            if (found.isEmpty()) {
                return new SheetReading.Unreadable("There is no drawing on this page.");
            }
            AxisLines drawn = new FrameLines(rough.widthMm(), rough.heightMm()).without(found.get());
            Optional<Placed> bar = bar(ink, drawn);
            if (bar.isEmpty()) {
                return new SheetReading.Unreadable("No reference bar was found on this page.");
            }
            LevelDirection level = LevelDirection.of(drawn.alongX(), drawn.alongY(), drawn.tiltDegrees());
            return new SheetReading.Readable(levelled(bar.get(), level));
        }

        private Optional<Placed> bar(InkImage ink, AxisLines drawn) {
            BarFinder finder = new BarFinder(ink, refit, format.referenceBarMm());
            List<Placed> bars = new ArrayList<>();
            finder.among(drawn.alongX()).forEach(bar -> bars.add(placed(bar)));
            finder.among(drawn.alongY()).forEach(bar -> bars.add(placed(bar)));
            return bars.stream().max(Comparator.comparingDouble(Placed::score));
        }

        private record Placed(Bar bar, int quarterTurns, double score) {}

        private Placed placed(Bar bar) {
            Point middle = bar.segment().midpoint();
            boolean along = Math.abs(bar.segment().vector().x())
                    > Math.abs(bar.segment().vector().y());
            double low = along ? middle.y() : rough.widthMm() - middle.x();
            double high = along ? rough.heightMm() - middle.y() : middle.x();
            int turns = (along ? 0 : 1) + (low <= high ? 0 : 2);
            double place = Math.min(low, high) < 55 ? 1 : 0.3;
            return new Placed(bar, turns, bar.shape() * place);
        }

        private LevelPage levelled(Placed placed, LevelDirection level) {
            Bar bar = placed.bar();
            double scale = format.referenceBarMm() / bar.segment().length();
            Sheet sheet = sheet(level.tiltDegrees() + 90 * placed.quarterTurns(), scale);
            PageMap toScan = rough.map().after(sheet.toRough());
            GreyPage grey =
                    PageWarp.warp(picture, toScan, sheet.widthMm(), sheet.heightMm(), LEVEL_PIXELS_PER_MM, 255);
            PlaneMap fromRough = sheet.toRough().inverse();
            List<Line> edges = rough.paper().stream()
                    .map(edge -> fromRough.apply(edge.between(0, 100)).line())
                    .toList();
            InkImage ink = InkFlattening.flatten(grey, new PaperMask(edges, EDGE_INSET));
            Segment found = fromRough.apply(bar.segment());
            Segment rightwards = found.vector().x() < 0 ? found.reversed() : found;
            double uncertainty = 100 * Math.hypot(bar.deviation(), 0.12) / format.referenceBarMm();
            return new LevelPage(
                    ink,
                    toScan,
                    toScan.pixelsPerMmAt(new Point(sheet.widthMm() / 2, sheet.heightMm() / 2)),
                    level.tiltDegrees(),
                    rough.kind() == RoughPage.Kind.PHOTOGRAPH,
                    new Calibration(Calibration.Source.REFERENCE_BAR, format.referenceBarMm(), uncertainty, 0.3),
                    Optional.of(rightwards),
                    List.of());
        }

        private record Sheet(PageMap toRough, double widthMm, double heightMm) {}

        /** The level page's millimetres: turned and scaled so that it holds the whole rough page. */
        private Sheet sheet(double turnDegrees, double scale) {
            Vector right = Vector.atDegrees(turnDegrees);
            Vector up = right.leftNormal();
            double left = Double.MAX_VALUE;
            double bottom = Double.MAX_VALUE;
            double most = -Double.MAX_VALUE;
            double top = -Double.MAX_VALUE;
            for (double x : new double[] {0, rough.widthMm()}) {
                for (double y : new double[] {0, rough.heightMm()}) {
                    Vector corner = new Vector(x, y);
                    left = Math.min(left, corner.dot(right));
                    most = Math.max(most, corner.dot(right));
                    bottom = Math.min(bottom, corner.dot(up));
                    top = Math.max(top, corner.dot(up));
                }
            }
            Vector origin = right.times(left).plus(up.times(bottom));
            PageMap toRough = PageMap.affine(
                    right.x() / scale, up.x() / scale, origin.x(), right.y() / scale, up.y() / scale, origin.y());
            return new Sheet(toRough, (most - left) * scale, (top - bottom) * scale);
        }
    }
}
