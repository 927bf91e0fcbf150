package wallplate.sheet;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.ScanPage.Picture;
import wallplate.task.SheetFormat;

/**
 * A roof section on a sheet, drawn with Java2D lines for tests: {@code aSheet().scannedAt(300).turned(180)}.
 *
 * <p>Its geometry is known exactly, apart from what anti-aliasing does to an edge.
 */
final class DrawnSheet {

    static final int PAPER_GREY = 235;
    /** The shadow on a lid fades to a third in so many millimetres. */
    private static final double SHADOW_FADES = 2.4;

    private static final double SHADOW_ENDS = 6;

    private static final double FOLD_LIGHT = 0.87;
    private static final double CONSTRUCTION_BEYOND = 12;
    private static final double PITCH = Math.toRadians(28);

    private SheetFormat format = new SheetFormat("A4", 297, 210, 100);
    private double dpi = 300;
    private double turnDegrees;
    private double drawingTiltDegrees;
    private double stretch;
    private double barLength = 100;
    private double surroundMm;
    private int surroundGrey;
    private double shadow;
    private boolean bar = true;
    private boolean uprightBar;
    private boolean slopes = true;
    private double leanToDegrees;
    private double tickBelow = 3;
    private double tickAbove = 3;
    private final List<Segment> others = new ArrayList<>();
    private final List<Segment> folds = new ArrayList<>();
    private double darkness = 1 - 90.0 / PAPER_GREY;
    private double breadthMm = 0.4;
    private double construction;
    private int blurPx;
    private double shown = 1;
    private OptionalDouble statedDpi = OptionalDouble.empty();
    private int paperGrey = PAPER_GREY;

    static DrawnSheet aSheet() {
        return new DrawnSheet();
    }

    DrawnSheet on(SheetFormat other) {
        format = other;
        barLength = other.referenceBarMm();
        return this;
    }

    DrawnSheet scannedAt(double dotsPerInch) {
        dpi = dotsPerInch;
        return this;
    }

    /** Laid on the glass turned clockwise as seen. */
    DrawnSheet turned(double degrees) {
        turnDegrees = degrees;
        return this;
    }

    /** The T-square was not square to the paper; anticlockwise. */
    DrawnSheet drawnTilted(double degrees) {
        drawingTiltDegrees = degrees;
        return this;
    }

    /** The picture's columns are longer than its rows by this share. */
    DrawnSheet stretchedUpwards(double share) {
        stretch = share;
        return this;
    }

    DrawnSheet withBarOf(double millimetres) {
        barLength = millimetres;
        return this;
    }

    DrawnSheet withoutBar() {
        bar = false;
        return this;
    }

    DrawnSheet withUprightBar() {
        uprightBar = true;
        return this;
    }

    DrawnSheet withoutSlopes() {
        slopes = false;
        return this;
    }

    /** Further lines, in millimetres on the sheet. */
    DrawnSheet with(Segment... lines) {
        others.addAll(List.of(lines));
        return this;
    }

    /** Further lines as faint as folds are, in millimetres on the sheet. */
    DrawnSheet foldedAlong(Segment... lines) {
        folds.addAll(List.of(lines));
        return this;
    }

    /** A roof that falls to one side only, on two walls, with no level line but the bar. */
    DrawnSheet leanTo(double pitchDegrees) {
        leanToDegrees = pitchDegrees;
        return this;
    }

    /**
     * Drawn with another pencil.
     *
     * @param share of the paper's light that an outline takes
     */
    DrawnSheet pencilled(double share, double lineBreadthMm) {
        darkness = share;
        breadthMm = lineBreadthMm;
        return this;
    }

    /** Each line of the drawing was first drawn thinner, so much fainter, and longer by 12 mm at either end. */
    DrawnSheet constructedFirst(double shareOfDarkness) {
        construction = shareOfDarkness;
        return this;
    }

    DrawnSheet withTicks(double below, double above) {
        tickBelow = below;
        tickAbove = above;
        return this;
    }

    /** The lens or the glass was out of focus: means over squares of this half side, three times over. */
    DrawnSheet blurredBy(int pixels) {
        blurPx = pixels;
        return this;
    }

    /** Only the left part of the page came through the scanner. */
    DrawnSheet cutOffAfter(double share) {
        shown = share;
        return this;
    }

    DrawnSheet withoutResolution() {
        return stating(0);
    }

    /** The file states another resolution than the scanner's. */
    DrawnSheet stating(double dotsPerInch) {
        statedDpi = OptionalDouble.of(dotsPerInch);
        return this;
    }

    /** The paper's edges are in the picture, with this much of the scanner's lid round them. */
    DrawnSheet surroundedBy(double millimetres, int grey) {
        surroundMm = millimetres;
        surroundGrey = grey;
        return this;
    }

    /** The paper throws a soft shadow on the lid round it, by its edges this much darker than the lid; it ends at 6 mm. */
    DrawnSheet throwingShadow(int greyLevels) {
        shadow = greyLevels;
        return this;
    }

    SheetFormat format() {
        return format;
    }

    /** From millimetres on the sheet, y up, to pixels of the picture. */
    AffineTransform toPixels() {
        double scale = dpi / 25.4;
        boolean sideways = Math.abs(Math.round(turnDegrees / 90)) % 2 == 1;
        double width = (sideways ? format.heightMm() : format.widthMm()) + 2 * surroundMm;
        double height = (sideways ? format.widthMm() : format.heightMm()) + 2 * surroundMm;
        AffineTransform map = new AffineTransform();
        map.scale(scale, scale * (1 + stretch));
        map.translate(width / 2, height / 2);
        map.rotate(Math.toRadians(turnDegrees));
        map.scale(1, -1);
        map.translate(-format.widthMm() / 2, -format.heightMm() / 2);
        return map;
    }

    Point pixel(double x, double y) {
        double[] at = {x, y};
        toPixels().transform(at, 0, at, 0, 1);
        return new Point(at[0], at[1]);
    }

    /** The ends of the bar on the sheet. */
    Segment barOnSheet() {
        return tilted(Segment.between(30, 25, 30 + barLength, 25));
    }

    /** Every line of the drawing on the sheet. */
    List<Segment> lines() {
        List<Segment> lines = new ArrayList<>();
        lines.addAll(leanToDegrees > 0 ? leanToLines() : eavesLines());
        if (bar) {
            lines.add(Segment.between(30, 25, 30 + barLength, 25));
            for (double x : new double[] {30, 30 + barLength}) {
                lines.add(Segment.between(x, 25 - tickBelow, x, 25 + tickAbove));
            }
        }
        if (uprightBar) {
            lines.add(Segment.between(20, 40, 20, 40 + barLength));
            lines.add(Segment.between(17, 40, 23, 40));
            lines.add(Segment.between(17, 40 + barLength, 23, 40 + barLength));
        }
        lines.addAll(others);
        return lines.stream().map(this::tilted).toList();
    }

    private List<Segment> eavesLines() {
        List<Segment> lines = new ArrayList<>();
        double left = format.widthMm() * 0.3;
        double base = format.heightMm() * 0.45;
        double run = format.widthMm() * 0.45;
        for (double y : new double[] {base, base + 6, base - 3}) {
            lines.add(Segment.between(left, y, left + run, y));
        }
        for (double x : new double[] {left, left + 11, left + run}) {
            lines.add(Segment.between(x, base - 35, x, base - 3));
        }
        lines.add(Segment.between(left + run, base, left + run, base + 60));
        if (slopes) {
            for (double y : new double[] {0, 8, 12, 14}) {
                lines.add(Segment.between(
                        left - 20,
                        base + y - 20 * Math.tan(PITCH),
                        left + run - 2,
                        base + y + (run - 2) * Math.tan(PITCH)));
            }
        }
        return lines;
    }

    private List<Segment> leanToLines() {
        List<Segment> lines = new ArrayList<>();
        double left = format.widthMm() * 0.15;
        double right = format.widthMm() * 0.8;
        double base = format.heightMm() * 0.6;
        double rise = Math.tan(Math.toRadians(leanToDegrees));
        for (double y : new double[] {0, 5, 9, 10.5}) {
            lines.add(Segment.between(left, base + y, right, base + y + (right - left) * rise));
        }
        for (double x : new double[] {left + 15, left + 24}) {
            lines.add(Segment.between(x, base - 25, x, base + (x - left) * rise));
        }
        for (double x : new double[] {right - 10, right - 1}) {
            lines.add(Segment.between(x, base - 25, x, base + (x - left) * rise));
        }
        return lines;
    }

    private Segment tilted(Segment line) {
        return new Segment(tilted(line.start()), tilted(line.end()));
    }

    private Point tilted(Point point) {
        Point middle = new Point(format.widthMm() / 2, format.heightMm() / 2);
        return middle.plus(point.minus(middle).rotatedDegrees(drawingTiltDegrees));
    }

    /** The page as it would come out of a file. */
    ScanPage page() {
        return new ScanPage("drawn.png", 1, picture());
    }

    Picture picture() {
        AffineTransform map = toPixels();
        boolean sideways = Math.abs(Math.round(turnDegrees / 90)) % 2 == 1;
        double scale = dpi / 25.4;
        int width = (int) Math.round(((sideways ? format.heightMm() : format.widthMm()) + 2 * surroundMm) * scale);
        int height = (int) Math.round(
                ((sideways ? format.widthMm() : format.heightMm()) + 2 * surroundMm) * scale * (1 + stretch));
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setColor(grey(surroundMm > 0 ? surroundGrey : paperGrey));
        graphics.fillRect(0, 0, width, height);
        graphics.transform(map);
        graphics.setColor(grey(paperGrey));
        graphics.fill(new java.awt.geom.Rectangle2D.Double(0, 0, format.widthMm(), format.heightMm()));
        if (construction > 0) {
            List<Segment> drawing = leanToDegrees > 0 ? leanToLines() : eavesLines();
            draw(graphics, drawing.stream().map(line -> tilted(constructionOf(line))).toList(), 1 - construction * darkness, 0.6 * breadthMm);
        }
        draw(graphics, lines(), 1 - darkness, breadthMm);
        draw(graphics, folds, FOLD_LIGHT, 0.4);
        graphics.dispose();
        byte[] bytes = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        if (shadow > 0) {
            shade(bytes, width, map);
        }
        for (int turn = 0; turn < 3 && blurPx > 0; turn++) {
            bytes = blurredAlong(bytes, width, height, 1, width);
            bytes = blurredAlong(bytes, height, width, width, 1);
        }
        grain(bytes);
        double stated = statedDpi.orElse(dpi);
        int left = (int) (width * shown);
        byte[] part = new byte[left * height];
        for (int row = 0; row < height; row++) {
            System.arraycopy(bytes, row * width, part, row * left, left);
        }
        return new Picture(left, height, part, stated, stated);
    }

    private void shade(byte[] bytes, int width, AffineTransform map) {
        double[] at = new double[2];
        for (int i = 0; i < bytes.length; i++) {
            at[0] = i % width + 0.5;
            at[1] = i / width + 0.5;
            try {
                map.inverseTransform(at, 0, at, 0, 1);
            } catch (NoninvertibleTransformException e) {
                throw new IllegalStateException(e);
            }
            double off = Math.hypot(
                    Math.max(0, Math.max(-at[0], at[0] - format.widthMm())),
                    Math.max(0, Math.max(-at[1], at[1] - format.heightMm())));
            if (off > 0 && off < SHADOW_ENDS) {
                bytes[i] = (byte) Math.round((bytes[i] & 0xff) - shadow * Math.exp(-off / SHADOW_FADES));
            }
        }
    }

    private void draw(Graphics2D graphics, List<Segment> segments, double light, double breadth) {
        graphics.setColor(grey((int) Math.round(paperGrey * light)));
        graphics.setStroke(new BasicStroke((float) breadth, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        for (Segment line : segments) {
            graphics.draw(new Line2D.Double(
                    line.start().x(), line.start().y(), line.end().x(), line.end().y()));
        }
    }

    /** A line's construction line, on the sheet before it is tilted. */
    static Segment constructionOf(Segment line) {
        double beyond = CONSTRUCTION_BEYOND / line.length();
        return new Segment(line.at(-beyond), line.at(1 + beyond));
    }

    /** Running means along rows or columns: so many lines of a length, with a step between places and between lines. */
    private byte[] blurredAlong(byte[] bytes, int length, int lines, int step, int next) {
        byte[] out = new byte[bytes.length];
        for (int line = 0; line < lines; line++) {
            long[] sums = new long[length + 1];
            for (int i = 0; i < length; i++) {
                sums[i + 1] = sums[i] + (bytes[line * next + i * step] & 0xff);
            }
            for (int i = 0; i < length; i++) {
                int from = Math.max(0, i - blurPx);
                int to = Math.min(length, i + blurPx + 1);
                out[line * next + i * step] = (byte) ((sums[to] - sums[from]) / (to - from));
            }
        }
        return out;
    }

    private static Color grey(int value) {
        // Grey images hold linear values in Java2D: asking for what comes out as the wanted byte.
        float linear = value / 255f;
        double srgb = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return new Color((float) srgb, (float) srgb, (float) srgb);
    }

    /** A scanner's noise of about three grey levels. */
    private static void grain(byte[] bytes) {
        Random random = new Random(7);
        int[] noise = random.ints(65_537, 0, 1_000_000).map(i -> (int) Math.round(random.nextGaussian() * 3)).toArray();
        for (int i = 0; i < bytes.length; i++) {
            int value = (bytes[i] & 0xff) + noise[i % noise.length];
            bytes[i] = (byte) Math.max(0, Math.min(255, value));
        }
    }
}
