package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/**
 * Tells the frame, the title block, the edges of the page and a feeder's streaks from the lines of the drawing.
 *
 * <p>A frame is square to the paper or was ruled along its edge, not along the T-square that the drawing was made with,
 * so it says nothing about the drawing's own level.
 */
public final class FrameLines {

    /** A frame line runs along most of the page's side. */
    private static final double FRAME_SHARE = 0.6;
    /** Nothing in a drawing runs across so much of a page; streaks of a feeder do. */
    private static final double ACROSS_SHARE = 0.8;
    /** How far from the picture's side a frame line may lie, as a share of the page across it. */
    private static final double MARGIN_SHARE = 0.16;
    /** So near the picture's side, in millimetres, runs the paper's own edge, never the drawing. */
    private static final double RIM = 5;
    private static final double TOUCH = 1.8;
    /** A streak is fainter than this share of the paper's grey; a frame is lined in. */
    private static final double STREAK_DARKNESS = 0.15;
    /** Frames stand 10 mm from the paper's edge; what runs along a side so near to it is a piece of one. */
    private static final double FRAME_PIECE = 14;
    /** Title blocks are hardly higher; ISO 7200 leaves their height open. */
    private static final double BLOCK_HEIGHT = 60;
    /** How nearly the rows of a title block end alike, and how much of their length they lie over one another. */
    private static final double ROWS_END = 3;

    private static final double ROWS_SHARE = 0.7;
    private static final double ROWS_APART = 3;
    private static final int FEWEST_OTHER_ROWS = 2;
    /** The drawing's own level is asked of at least so much length of lines. */
    private static final double ENOUGH_LENGTH = 60;

    private final double width;
    private final double height;

    public FrameLines(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /** The lines without frame, title block and streaks. */
    public AxisLines without(AxisLines lines) {
        List<Segment> frame = new ArrayList<>();
        for (Fitted line : lines.alongX()) {
            if (isFrame(line.segment(), true)) {
                frame.add(line.segment());
            }
        }
        for (Fitted line : lines.alongY()) {
            if (isFrame(line.segment(), false)) {
                frame.add(line.segment());
            }
        }
        return new AxisLines(
                lines.tiltDegrees(), apartFrom(frame, lines.alongX(), true), apartFrom(frame, lines.alongY(), false));
    }

    /**
     * The lines that say how the drawing's T-square lay: none of the pieces of a frame that was found in part only, and none
     * of a title block, which were printed or ruled along the paper. All of them where hardly any others are there.
     *
     * @param drawn the lines without those of a frame that was found whole
     */
    public AxisLines ruledByTheDrawing(AxisLines drawn) {
        List<Segment> paperwork = new ArrayList<>();
        addPaperwork(paperwork, drawn.alongX(), true);
        addPaperwork(paperwork, drawn.alongY(), false);
        AxisLines others = new AxisLines(
                drawn.tiltDegrees(), besides(paperwork, drawn.alongX()), besides(paperwork, drawn.alongY()));
        double length = Stream.concat(others.alongX().stream(), others.alongY().stream())
                .mapToDouble(line -> line.segment().length())
                .sum();
        return length < ENOUGH_LENGTH ? drawn : others;
    }

    private void addPaperwork(List<Segment> paperwork, List<Fitted> lines, boolean alongX) {
        List<Segment> low = lines.stream()
                .map(Fitted::segment)
                .filter(line -> margin(line, alongX) < BLOCK_HEIGHT)
                .toList();
        for (Segment line : low) {
            boolean row = endsAtFrame(line, alongX)
                    && low.stream().filter(other -> areRows(line, other, alongX)).count() >= FEWEST_OTHER_ROWS;
            if (row || margin(line, alongX) < FRAME_PIECE) {
                paperwork.add(line);
            }
        }
    }

    /** Whether one of a line's ends is where the frame across it stands. */
    private boolean endsAtFrame(Segment line, boolean alongX) {
        double side = alongX ? width : height;
        return from(line, alongX) < FRAME_PIECE || to(line, alongX) > side - FRAME_PIECE;
    }

    private boolean areRows(Segment line, Segment other, boolean alongX) {
        double overlap = Math.min(to(line, alongX), to(other, alongX)) - Math.max(from(line, alongX), from(other, alongX));
        boolean endAlike = Math.abs(from(line, alongX) - from(other, alongX)) < ROWS_END
                || Math.abs(to(line, alongX) - to(other, alongX)) < ROWS_END;
        double apart = Math.abs(line.line().distanceTo(other.midpoint()));
        return endAlike
                && apart > ROWS_APART
                && apart < BLOCK_HEIGHT
                && overlap > ROWS_SHARE * Math.max(line.length(), other.length());
    }

    private static double from(Segment line, boolean alongX) {
        return alongX ? Math.min(line.start().x(), line.end().x()) : Math.min(line.start().y(), line.end().y());
    }

    private static double to(Segment line, boolean alongX) {
        return alongX ? Math.max(line.start().x(), line.end().x()) : Math.max(line.start().y(), line.end().y());
    }

    /** The lines that neither are paperwork nor end at it, as the uprights of a title block do. */
    private static List<Fitted> besides(List<Segment> paperwork, List<Fitted> lines) {
        return lines.stream()
                .filter(line -> !paperwork.contains(line.segment()) && !touches(line.segment(), paperwork))
                .toList();
    }

    /** The frame, where all four of its lines were found. */
    public Optional<Frame> frame(AxisLines lines) {
        Optional<Segment> bottom = side(lines.alongX(), true, line -> line.midpoint().y());
        Optional<Segment> top = side(lines.alongX(), true, line -> height - line.midpoint().y());
        Optional<Segment> left = side(lines.alongY(), false, line -> line.midpoint().x());
        Optional<Segment> right = side(lines.alongY(), false, line -> width - line.midpoint().x());
        if (bottom.isEmpty() || top.isEmpty() || left.isEmpty() || right.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Frame(bottom.get(), right.get(), top.get(), left.get()));
    }

    /** The dark frame line nearest to one side of the page, in the half of the page at that side. */
    private Optional<Segment> side(List<Fitted> lines, boolean alongX, ToDoubleFunction<Segment> margin) {
        double across = alongX ? height : width;
        return lines.stream()
                .filter(line -> line.darkness() > STREAK_DARKNESS)
                .map(Fitted::segment)
                .filter(line -> isFrame(line, alongX) && margin.applyAsDouble(line) < MARGIN_SHARE * across)
                .min(Comparator.comparingDouble(margin));
    }

    private List<Fitted> apartFrom(List<Segment> frame, List<Fitted> lines, boolean alongX) {
        return lines.stream()
                .filter(line -> !isRim(line.segment(), alongX))
                .filter(line -> !frame.contains(line.segment()) && !touches(line.segment(), frame))
                .toList();
    }

    private boolean isFrame(Segment line, boolean alongX) {
        double side = alongX ? width : height;
        double across = alongX ? height : width;
        return line.length() > ACROSS_SHARE * side
                || (line.length() > FRAME_SHARE * side && margin(line, alongX) < MARGIN_SHARE * across);
    }

    private boolean isRim(Segment line, boolean alongX) {
        return margin(line, alongX) < RIM;
    }

    /** How far a line's middle is from the nearer of the two sides that it runs along. */
    private double margin(Segment line, boolean alongX) {
        double across = alongX ? height : width;
        double at = alongX ? line.midpoint().y() : line.midpoint().x();
        return Math.min(at, across - at);
    }

    private static boolean touches(Segment line, List<Segment> frame) {
        return frame.stream().anyMatch(side -> near(side, line.start()) || near(side, line.end()));
    }

    private static boolean near(Segment side, Point end) {
        return side.distanceTo(end) < TOUCH;
    }
}
