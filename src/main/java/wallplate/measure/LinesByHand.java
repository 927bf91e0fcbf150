package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
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

    private static final double PITCH_SIGMA_DEGREES = 0.05;
    private static final double LINE_SIGMA_MM = 0.012;

    private final LevelPage page;
    private final double slopeDegrees;
    private final double outlineInk;
    private final EdgeFit fit;

    private LinesByHand(LevelPage page, double slopeDegrees, double outlineInk) {
        this.page = page;
        this.slopeDegrees = slopeDegrees;
        this.outlineInk = outlineInk;
        this.fit = new EdgeFit(page.ink(), outlineInk);
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
        return DrawingView.of(page.ink())
                .map(view -> new LinesByHand(
                        page, view.mirrored() ? -view.slopeDegrees() : view.slopeDegrees(), view.outlineInk()));
    }

    /** Whether a key can be measured from chosen lines. */
    public static boolean isFor(String key) {
        return Span.of(key).isPresent();
    }

    /** Which lines a key asks for, such as "two upright lines"; empty where it cannot be measured so. */
    public static Optional<String> asks(String key) {
        return Span.of(key).map(Span::lines);
    }

    /** The lines on the page among which a key's lines are to be chosen, longest first. */
    public List<Segment> choices(String key) {
        List<Double> directions = Span.of(key).map(this::directions).orElse(List.of());
        StrokeFinder finder = new StrokeFinder(SHORT_ONES_TOO);
        List<Segment> choices = new ArrayList<>();
        for (double direction : directions) {
            for (Stroke stroke : finder.find(page.ink(), direction)) {
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
        if (chosen.size() < span.get().fewest() || chosen.size() > 2) {
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
            edges.add(fitted(piece, direction.get(), gap(chosen)));
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

    /** How far apart the chosen lines are, which bounds how far to their sides their ink is looked for. */
    private static double gap(List<Segment> chosen) {
        return chosen.size() < 2
                ? Double.MAX_VALUE
                : Math.abs(chosen.get(0).line().distanceTo(chosen.get(1).midpoint()));
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
        if (span == Span.RIM) {
            return rim(key, first, last);
        }
        double value = Math.abs(
                switch (span) {
                    case LEVEL -> first.distanceTo(last, Level.UP);
                    case UPRIGHT, PLUMB -> first.distanceTo(last, Level.RIGHT);
                    default -> first.distanceTo(last, first.line().direction());
                });
        double sigma = Math.hypot(SheetMeasuring.placeSigma(first), SheetMeasuring.placeSigma(last));
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

    /** With the millimetres' own uncertainty. */
    private Finding.Quantity length(double value, double sigma) {
        double scale = value * page.calibration().uncertaintyPercent() / 100;
        return new Finding.Quantity(value, Math.sqrt(sigma * sigma + scale * scale + LINE_SIGMA_MM * LINE_SIGMA_MM));
    }

    private double pitchSigma(double pitch) {
        double stretch = page.calibration().stretchUncertaintyPercent() / 100;
        double radians = Math.toRadians(pitch);
        return Math.hypot(PITCH_SIGMA_DEGREES, Math.toDegrees(stretch * Math.sin(radians) * Math.cos(radians)));
    }

    private static Measurement measurement(String key, Finding finding, List<Edge> edges) {
        return new Measurement(key, finding, edges.stream().map(Edge::segment).toList());
    }
}
