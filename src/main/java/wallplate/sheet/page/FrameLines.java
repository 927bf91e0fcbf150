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
    /** How far from the picture's side a frame line may lie, as a share of the page across it and in millimetres. */
    private static final double MARGIN_SHARE = 0.16;

    private static final double WIDEST_MARGIN = 35;
    /** So near the picture's side, in millimetres, runs the paper's own edge, never the drawing. */
    private static final double RIM = 5;
    private static final double TOUCH = 1.8;
    /** A streak is fainter than this share of the paper's grey; a frame is lined in. */
    private static final double STREAK_DARKNESS = 0.15;
    /** Frames stand 10 mm from the paper's edge; what runs along a side so near to it is a piece of one. */
    private static final double FRAME_PIECE = 14;
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
        List<Segment> frame = new ArrayList<>(frames(lines.alongX(), true));
        frame.addAll(frames(lines.alongY(), false));
        return new AxisLines(
                lines.tiltDegrees(), apartFrom(frame, lines.alongX(), true), apartFrom(frame, lines.alongY(), false));
    }

    /** The lines of the frame, with those so near a side of the page that they may be pieces of it. */
    public List<Segment> wholeOrInPieces(AxisLines lines) {
        return Stream.concat(nearSides(lines.alongX(), true), nearSides(lines.alongY(), false))
                .toList();
    }

    private Stream<Segment> nearSides(List<Fitted> lines, boolean alongX) {
        return lines.stream()
                .map(Fitted::segment)
                .filter(line -> isFrame(line, alongX) || margin(line, alongX) < FRAME_PIECE);
    }

    private List<Segment> frames(List<Fitted> lines, boolean alongX) {
        return lines.stream()
                .map(Fitted::segment)
                .filter(line -> isFrame(line, alongX))
                .toList();
    }

    /**
     * The lines that say how the drawing's T-square lay: none of the pieces of a frame that was found in part only, and none
     * of a title block, which were printed or ruled along the paper, nor narrow level lines that were ruled so. All of them
     * where hardly any others are there.
     *
     * @param all the lines along the axes, with those of frame and title block
     * @param levelAlongX whether the drawing's level lines run along the page's x axis
     */
    public AxisLines ruledByTheDrawing(AxisLines all, boolean levelAlongX) {
        AxisLines drawn = without(all);
        List<Segment> paperwork = new ArrayList<>();
        addPaperwork(paperwork, all.alongX(), all.alongY(), true);
        addPaperwork(paperwork, all.alongY(), all.alongX(), false);
        AxisLines others = new AxisLines(
                drawn.tiltDegrees(),
                besides(paperwork, withLongOnes(drawn.alongX(), all.alongX(), all.alongY(), true)),
                besides(paperwork, withLongOnes(drawn.alongY(), all.alongY(), all.alongX(), false)));
        double length = Stream.concat(others.alongX().stream(), others.alongY().stream())
                .mapToDouble(line -> line.segment().length())
                .sum();
        return length < ENOUGH_LENGTH ? drawn : NarrowLines.without(others, all, levelAlongX);
    }

    /** With the lines that are longer than a title block is high and reach the frame with one end: a drawing runs into it. */
    private List<Fitted> withLongOnes(List<Fitted> drawn, List<Fitted> along, List<Fitted> across, boolean alongX) {
        List<Segment> frame = frames(across, !alongX);
        return along.stream()
                .filter(line -> drawn.contains(line) || isLong(line.segment(), alongX) && reachesOnce(line.segment(), frame))
                .toList();
    }

    private boolean isLong(Segment line, boolean alongX) {
        return line.length() > TitleBlock.HEIGHT && !isFrame(line, alongX) && margin(line, alongX) > FRAME_PIECE;
    }

    private static boolean reachesOnce(Segment line, List<Segment> frame) {
        boolean start = frame.stream().anyMatch(side -> near(side, line.start()));
        boolean end = frame.stream().anyMatch(side -> near(side, line.end()));
        return start != end;
    }

    private void addPaperwork(List<Segment> paperwork, List<Fitted> along, List<Fitted> across, boolean alongX) {
        List<Segment> low = along.stream()
                .map(Fitted::segment)
                .filter(line -> !isFrame(line, alongX) && margin(line, alongX) < TitleBlock.HEIGHT)
                .toList();
        low.stream().filter(line -> margin(line, alongX) < FRAME_PIECE).forEach(paperwork::add);
        paperwork.addAll(new TitleBlock(low, frames(across, !alongX), alongX, alongX ? width : height).lines());
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
                .filter(line -> isFrame(line, alongX) && margin.applyAsDouble(line) < widestMargin(across))
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
                || (line.length() > FRAME_SHARE * side && margin(line, alongX) < widestMargin(across));
    }

    private static double widestMargin(double across) {
        return Math.min(WIDEST_MARGIN, MARGIN_SHARE * across);
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
