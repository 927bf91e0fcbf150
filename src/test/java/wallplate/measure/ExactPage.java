package wallplate.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.task.EavesSide;

/**
 * A level page that bears exactly the solver's lines, without noise: outlines 0.35 mm broad, the rest 0.2 mm, ends round
 * as a pencil's. Rastered by Java 2D, whose anti-aliasing is the outside reference for where a line lies.
 */
public final class ExactPage {

    private static final double PIXELS_PER_MM = 10;
    private static final float OUTLINE_MM = 0.35f;
    private static final float THIN_MM = 0.2f;
    private static final int INK = 190;
    private static final double MARGIN_MM = 12;

    private ExactPage() {}

    public static LevelPage of(ExpectedDrawing drawing) {
        return of(drawing, line -> true);
    }

    /** The page with only those lines that are wanted. */
    public static LevelPage of(ExpectedDrawing drawing, Predicate<DrawnLine> wanted) {
        return of(drawing, drawing.lines().stream().filter(wanted).toList());
    }

    /** The page with other lines than the solver's, its eaves on the hand that the task says and as large as that. */
    public static LevelPage of(ExpectedDrawing drawing, List<DrawnLine> lines) {
        boolean right = drawing.task().eaves() == EavesSide.RIGHT;
        return of(lines, right, drawing.task().sheet().widthMm(), drawing.task().sheet().heightMm());
    }

    /** The page with its eaves on the hand said, whatever the task says. */
    public static LevelPage of(List<DrawnLine> lines, boolean eavesRight, double widthMm, double heightMm) {
        BufferedImage picture = new BufferedImage(
                (int) Math.round(widthMm * PIXELS_PER_MM), (int) Math.round(heightMm * PIXELS_PER_MM),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D pencil = picture.createGraphics();
        pencil.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pencil.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pencil.setColor(new Color(INK, INK, INK));
        Vector shift = shift(lines, eavesRight, widthMm, heightMm);
        for (DrawnLine line : lines) {
            float breadth = isOutline(line) ? OUTLINE_MM : THIN_MM;
            pencil.setStroke(new BasicStroke(
                    (float) (breadth * PIXELS_PER_MM), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            Segment segment = eavesRight ? line.segment().mirrored() : line.segment();
            Point start = segment.start().plus(shift);
            Point end = segment.end().plus(shift);
            pencil.draw(new Line2D.Double(
                    start.x() * PIXELS_PER_MM, picture.getHeight() - start.y() * PIXELS_PER_MM,
                    end.x() * PIXELS_PER_MM, picture.getHeight() - end.y() * PIXELS_PER_MM));
        }
        pencil.dispose();
        return levelPage(ink(picture));
    }

    /** A page as a perfect scanner would have read it. */
    public static LevelPage levelPage(InkImage ink) {
        return new LevelPage(
                ink, new Same(), ink.pixelsPerMm(), 0, false,
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, 0.02, 0.02), Optional.empty(), List.of());
    }

    public static boolean isOutline(DrawnLine line) {
        return line.role() == LineRole.CUT_OUTLINE || line.role() == LineRole.SEEN_OUTLINE;
    }

    /** What brings the lines' middle to the middle of the sheet, a little above the place of the bar. */
    public static Vector shift(List<DrawnLine> lines, boolean eavesRight, double widthMm, double heightMm) {
        double left = Double.MAX_VALUE;
        double right = -Double.MAX_VALUE;
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        for (DrawnLine line : lines) {
            Segment segment = eavesRight ? line.segment().mirrored() : line.segment();
            for (Point point : List.of(segment.start(), segment.end())) {
                left = Math.min(left, point.x());
                right = Math.max(right, point.x());
                low = Math.min(low, point.y());
                high = Math.max(high, point.y());
            }
        }
        if (right - left > widthMm - 2 * MARGIN_MM || high - low > heightMm - 2 * MARGIN_MM) {
            throw new AssertionError("the drawing of %.0f x %.0f mm does not fit its sheet of %.0f x %.0f mm"
                    .formatted(right - left, high - low, widthMm, heightMm));
        }
        return new Vector((widthMm - left - right) / 2, (heightMm - low - high) / 2);
    }

    private static InkImage ink(BufferedImage picture) {
        int width = picture.getWidth();
        int height = picture.getHeight();
        byte[] ink = new byte[width * height];
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            picture.getRGB(0, y, width, 1, row, 0, width);
            for (int x = 0; x < width; x++) {
                ink[y * width + x] = (byte) (row[x] & 0xff);
            }
        }
        return new InkImage(width, height, PIXELS_PER_MM, ink);
    }

    /** The page is its own scan. */
    private static final class Same implements PlaneMap {

        @Override
        public Point apply(Point point) {
            return point;
        }

        @Override
        public PlaneMap inverse() {
            return this;
        }
    }
}
