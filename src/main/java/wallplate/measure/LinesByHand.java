package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.stroke.Edge;
import wallplate.stroke.EdgeFit;
import wallplate.stroke.Stroke;
import wallplate.stroke.StrokeFinder;
import wallplate.stroke.StrokeSettings;

/**
 * Values measured from lines that a person chose on a level page.
 *
 * <p>The person says which lines are meant; where they lie, and how well that is known, their own ink says, just as when
 * the program chooses. A line is chosen from those that {@link #choices} offers, or given as a piece near its ink.
 */
public final class LinesByHand {

    /** As the program looks for strokes itself, but also for those that close a board 1 to 2 mm thick. */
    private static final StrokeSettings SHORT_ONES_TOO = shortOnesToo(StrokeSettings.usual());

    /** The share of an outline's ink from which a piece of a stroke is offered on its own. */
    private static final double PIECE_PART = 0.4;
    /** Less of a chosen line inked than this is no line. */
    private static final double LEAST_INKED = 0.4;

    private static final double MOST_OFF_DEGREES = 3;
    private static final double SHORT_MM = 6;
    private static final double LONG_MM = 25;
    /** A free end is known to the rounding of a pencil stroke's end; a step of the ink along it is 0.5 mm. */
    private static final double END_SIGMA_MM = 0.3;

    /** The sine of the angle below which lines meet in no point that could be told. */
    private static final double MEETING_SINE = 0.1;

    private static final double PITCH_SIGMA_DEGREES = 0.05;
    private static final double LINE_SIGMA_MM = 0.012;

    private final InkImage ink;
    private final Calibration calibration;
    private final double slopeDegrees;
    private final double outlineInk;
    private final EdgeFit fit;

    private LinesByHand(DrawingView view, Calibration calibration) {
        this.ink = view.inkOnPage();
        this.calibration = calibration;
        this.slopeDegrees = view.mirrored() ? -view.slopeDegrees() : view.slopeDegrees();
        this.outlineInk = view.outlineInk();
        this.fit = new EdgeFit(ink, outlineInk);
    }

    private static StrokeSettings shortOnesToo(StrokeSettings usual) {
        return new StrokeSettings(
                usual.faintestInk(),
                usual.prominence(),
                usual.gateMm(),
                usual.bridgedGapMm(),
                usual.mergedGapMm(),
                usual.sameLineMm(),
                2,
                1);
    }

    /** What came of the lines chosen. */
    public sealed interface Outcome {}

    /** A value with its uncertainty; the evidence is the chosen lines. */
    public record Measured(Measurement measurement) implements Outcome {}

    /**
     * The lines cannot be measured.
     *
     * @param reason a sentence with what was found and what to do
     */
    public record Refused(String reason) implements Outcome {}

    /** The lines of a page; empty where the page shows no sloping lines, so that its drawing is not understood at all. */
    public static Optional<LinesByHand> on(LevelPage page) {
        return DrawingView.of(page).map(view -> new LinesByHand(view, page.calibration()));
    }

    /** Whether a key can be measured from chosen lines. */
    public static boolean isFor(String key) {
        return Span.of(key).isPresent();
    }

    /** Which lines a key asks for, such as "two upright lines"; empty where it cannot be measured so. */
    public static Optional<String> asks(String key) {
        return Span.of(key).map(Span::lines);
    }

    /** How many lines may be chosen for a key; none where it cannot be measured so. */
    public static int most(String key) {
        return Span.of(key).map(Span::most).orElse(0);
    }

    /** The lines on the page among which a key's lines are to be chosen, longest first. */
    public List<Segment> choices(String key) {
        List<Double> directions = Span.of(key).map(this::directions).orElse(List.of());
        StrokeFinder finder = new StrokeFinder(SHORT_ONES_TOO);
        List<Segment> choices = new ArrayList<>();
        for (double direction : directions) {
            for (Stroke stroke : finder.find(ink, direction)) {
                if (Angles.between(stroke.centreLine().inclinationDegrees(), direction) <= MOST_OFF_DEGREES) {
                    choices.addAll(pieces(stroke));
                }
            }
        }
        choices.sort(Comparator.comparingDouble(Segment::length)
                .reversed()
                .thenComparing(piece -> piece.start().x())
                .thenComparing(piece -> piece.start().y()));
        return choices;
    }

    /** A stroke's dark pieces; all of it where it is faint from end to end. */
    private List<Segment> pieces(Stroke stroke) {
        List<Segment> pieces = Run.of(stroke, PIECE_PART * outlineInk).stream()
                .map(Run::segment)
                .filter(piece -> piece.length() >= SHORT_ONES_TOO.shortestMm())
                .toList();
        return pieces.isEmpty() ? List.of(stroke.centreLine()) : pieces;
    }

    private List<Double> directions(Span span) {
        double square = Angles.inclination(slopeDegrees + 90);
        return switch (span) {
            case LEVEL -> List.of(90.0);
            case UPRIGHT -> List.of(0.0);
            case PLUMB, SQUARE, ANGLE -> List.of(slopeDegrees);
            case ALONG -> List.of(square);
            case RIM -> List.of(0.0, 90.0);
            case OFFSET -> List.of(0.0, 90.0, slopeDegrees);
            case BEYOND -> List.of(slopeDegrees, 90.0, square);
            case MIDDLES -> List.of(90.0);
        };
    }

    /**
     * The value of a key between the lines chosen.
     *
     * @param chosen pieces near the lines' ink, in page millimetres
     */
    public Outcome measure(String key, List<Segment> chosen) {
        Optional<Span> span = Span.of(key);
        if (span.isEmpty()) {
            return new Refused("This criterion cannot be measured between two lines. Decide about its mark instead.");
        }
        if (chosen.size() < span.get().fewest() || chosen.size() > span.get().most()) {
            return new Refused(String.format(
                    Locale.ROOT, "%d lines are chosen; right would be %s.", chosen.size(), span.get().lines()));
        }
        List<Edge> edges = new ArrayList<>();
        for (Segment piece : chosen) {
            Optional<Double> direction = direction(piece, span.get());
            if (direction.isEmpty()) {
                return new Refused("One of the lines chosen runs in another direction; right would be "
                        + span.get().lines() + ".");
            }
            edges.add(fitted(piece, direction.get(), gap(piece, chosen)));
        }
        if (edges.stream().anyMatch(edge -> edge.coverage() < LEAST_INKED)) {
            return new Refused("There is too little ink where one of the lines was chosen. Choose a line that is drawn.");
        }
        return measured(key, span.get(), edges);
    }

    private Optional<Double> direction(Segment piece, Span span) {
        return directions(span).stream()
                .filter(direction -> piece.length() > 0
                        && Angles.between(piece.inclinationDegrees(), direction) <= 2 * MOST_OFF_DEGREES)
                .min(Comparator.comparingDouble(direction -> Angles.between(piece.inclinationDegrees(), direction)));
    }

    /** How far the nearest other chosen line of its direction is, which bounds how far to its sides ink is looked for. */
    private static double gap(Segment piece, List<Segment> chosen) {
        return chosen.stream()
                .filter(other -> other != piece
                        && Angles.between(other.inclinationDegrees(), piece.inclinationDegrees()) < 2 * MOST_OFF_DEGREES)
                .mapToDouble(other -> Math.abs(piece.line().distanceTo(other.midpoint())))
                .min()
                .orElse(Double.MAX_VALUE);
    }

    /** The direction of a short piece is that of its family: its own is told badly by so little ink. */
    private Edge fitted(Segment piece, double familyDegrees, double gap) {
        double half = piece.length() / 2;
        double trim = Math.min(1.0, piece.length() / 5);
        Line line = new Line(
                piece.midpoint(), piece.length() < SHORT_MM ? Vector.atDegrees(familyDegrees) : piece.vector());
        double doubt = piece.length() < SHORT_MM ? 0.15 : piece.length() < LONG_MM ? 0.5 : 1;
        double window = Math.max(0.16, Math.min(0.35, gap / 4));
        return fit.fit(line, trim - half, half - trim, doubt, window).within(-half, half);
    }

    private Outcome measured(String key, Span span, List<Edge> edges) {
        Edge first = edges.get(0);
        Edge last = edges.get(edges.size() - 1);
        if (span == Span.ANGLE) {
            double angle = edges.stream()
                    .mapToDouble(edge -> Math.abs(edge.line().inclinationDegrees()))
                    .average()
                    .orElseThrow();
            return new Measured(measurement(key, new Finding.Quantity(angle, pitchSigma(angle)), edges));
        }
        switch (span) {
            case RIM -> {
                return rim(key, first, last);
            }
            case OFFSET -> {
                return offset(key, edges);
            }
            case BEYOND -> {
                return beyond(key, edges);
            }
            case MIDDLES -> {
                return middles(key, edges);
            }
            default -> {
                return between(key, span, edges);
            }
        }
    }

    private Outcome between(String key, Span span, List<Edge> edges) {
        Edge first = edges.get(0);
        Edge last = edges.get(edges.size() - 1);
        double value = Math.abs(
                switch (span) {
                    case LEVEL -> first.distanceTo(last, Level.UP);
                    case UPRIGHT, PLUMB -> first.distanceTo(last, Level.RIGHT);
                    default -> first.distanceTo(last, first.line().direction());
                });
        double sigma = Math.hypot(Findings.placeSigma(first), Findings.placeSigma(last));
        return value < StrokeSettings.usual().sameLineMm()
                ? new Refused("Both choices are the same line. Choose two lines that lie apart.")
                : new Measured(measurement(key, length(value, sigma), edges));
    }

    private Outcome rim(String key, Edge first, Edge last) {
        boolean isLevelFirst = Math.abs(first.line().inclinationDegrees()) < 45;
        Edge bottom = isLevelFirst ? first : last;
        Edge side = isLevelFirst ? last : first;
        if (Math.abs(bottom.line().inclinationDegrees()) > 45 || Math.abs(side.line().inclinationDegrees()) < 45) {
            return new Refused("Choose " + Span.RIM.lines() + ".");
        }
        double top = Math.max(side.segment().start().y(), side.segment().end().y());
        double value = top - bottom.yAt(side.middle().x());
        return value <= 0
                ? new Refused("The upright line ends below the level one. Choose " + Span.RIM.lines() + ".")
                : new Measured(measurement(
                        key, length(value, Math.hypot(END_SIGMA_MM, bottom.offsetSigmaMm())), List.of(side, bottom)));
    }

    /** How far above the heel point the sloping line passes, square to the slope; below it the value is negative. */
    private Outcome offset(String key, List<Edge> edges) {
        Optional<Edge> level = along(edges, 0);
        Optional<Edge> upright = along(edges, 90);
        Optional<Edge> sloping = along(edges, slopeDegrees);
        Optional<Point> heel = meeting(level, upright);
        if (heel.isEmpty() || sloping.isEmpty()) {
            return new Refused("Choose " + Span.OFFSET.lines() + ".");
        }
        double above = sloping.get().yAt(heel.get().x()) - heel.get().y();
        double value = above * Math.cos(Math.toRadians(slopeDegrees));
        return new Measured(measurement(key, length(value, sigma(edges)), edges));
    }

    /** How far down the slope a line square to it lies beyond where the other two meet. */
    private Outcome beyond(String key, List<Edge> edges) {
        Optional<Edge> sloping = along(edges, slopeDegrees);
        Optional<Edge> upright = along(edges, 90);
        Optional<Edge> square = along(edges, Angles.inclination(slopeDegrees + 90));
        Optional<Point> toe = meeting(sloping, upright);
        if (toe.isEmpty() || square.isEmpty()) {
            return new Refused("Choose " + Span.BEYOND.lines() + ".");
        }
        Vector along = Vector.atDegrees(sloping.get().line().inclinationDegrees());
        Vector down = along.y() > 0 ? along.times(-1) : along;
        double value = square.get().middle().minus(toe.get()).dot(down);
        return new Measured(measurement(key, length(value, sigma(edges)), edges));
    }

    /** From the middle of one group of upright lines to that of the other: the widest gap parts them. */
    private Outcome middles(String key, List<Edge> edges) {
        List<Edge> fromLeft = edges.stream()
                .sorted(Comparator.comparingDouble(edge -> edge.middle().x()))
                .toList();
        int parted = 1;
        for (int at = 2; at < fromLeft.size(); at++) {
            if (gapBefore(fromLeft, at) > gapBefore(fromLeft, parted)) {
                parted = at;
            }
        }
        if (parted > 2 || fromLeft.size() - parted > 2) {
            return new Refused("Choose " + Span.MIDDLES.lines() + ".");
        }
        double value = middle(fromLeft.subList(parted, fromLeft.size())) - middle(fromLeft.subList(0, parted));
        return new Measured(measurement(key, length(value, sigma(edges)), edges));
    }

    private static double gapBefore(List<Edge> fromLeft, int at) {
        return fromLeft.get(at).middle().x() - fromLeft.get(at - 1).middle().x();
    }

    private static double middle(List<Edge> group) {
        return group.stream().mapToDouble(edge -> edge.middle().x()).average().orElseThrow();
    }

    /** The one line of a direction; empty where there is none or another one of it. */
    private static Optional<Edge> along(List<Edge> edges, double degrees) {
        List<Edge> found = edges.stream()
                .filter(edge -> Angles.between(edge.line().inclinationDegrees(), degrees) <= 2 * MOST_OFF_DEGREES)
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private static Optional<Point> meeting(Optional<Edge> one, Optional<Edge> other) {
        return one.flatMap(line -> other.flatMap(cross -> line.line().intersection(cross.line(), MEETING_SINE)));
    }

    private static double sigma(List<Edge> edges) {
        return Math.sqrt(edges.stream()
                .mapToDouble(edge -> Math.pow(Findings.placeSigma(edge), 2))
                .sum());
    }

    /** With the millimetres' own uncertainty. */
    private Finding.Quantity length(double value, double sigma) {
        double scale = Math.abs(value) * calibration.uncertaintyPercent() / 100;
        return new Finding.Quantity(value, Math.sqrt(sigma * sigma + scale * scale + LINE_SIGMA_MM * LINE_SIGMA_MM));
    }

    private double pitchSigma(double pitch) {
        double stretch = calibration.stretchUncertaintyPercent() / 100;
        double radians = Math.toRadians(pitch);
        return Math.hypot(PITCH_SIGMA_DEGREES, Math.toDegrees(stretch * Math.sin(radians) * Math.cos(radians)));
    }

    private static Measurement measurement(String key, Finding finding, List<Edge> edges) {
        return new Measurement(key, finding, edges.stream().map(Edge::segment).toList());
    }
}
