package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.stroke.CrossLines;
import wallplate.stroke.Edge;
import wallplate.stroke.EdgeFit;
import wallplate.stroke.InkStrength;
import wallplate.stroke.SlopeDirection;
import wallplate.stroke.Stroke;
import wallplate.stroke.StrokeFinder;
import wallplate.stroke.StrokeSettings;

/**
 * One drawing seen with its eaves on the left: the page's ink, mirrored where the learner drew it the other way, with
 * its strokes by direction.
 *
 * @param mirrored whether the page was mirrored to bring the eaves to the left
 * @param slopeDegrees the direction of the sloping lines, above the page's horizontal
 * @param outlineInk the usual ink of this drawing's own outlines
 */
record DrawingView(
        InkImage ink,
        boolean mirrored,
        double slopeDegrees,
        double outlineInk,
        EdgeFit fit,
        List<Run> sloping,
        List<Run> level,
        List<Run> upright) {

    /** The share of an outline's ink above which a line is an outline; construction lines stay below 0.42. */
    static final double OUTLINE_PART = 0.5;

    /** What was too pale to be found as a stroke helps to even the ink once more. */
    private static final int EVENINGS = 2;

    private static final double FLATTEST_DEGREES = 6;
    private static final double STEEPEST_DEGREES = 79;
    private static final double LONG_MM = 25;
    private static final double MOST_OFF_LEVEL_DEGREES = 1.5;

    Vector slope() {
        return Vector.atDegrees(slopeDegrees);
    }

    Vector squareToSlope() {
        return slope().leftNormal();
    }

    /** The ink as the page has it, not mirrored. */
    InkImage inkOnPage() {
        return mirrored ? mirror(ink) : ink;
    }

    /** The lines that cross a band of this drawing. */
    CrossLines crossLines() {
        return new CrossLines(ink, outlineInk);
    }

    /** The share of an upright, between two heights in any order, on which there is ink of an outline. */
    double uprightInk(double x, double fromY, double toY) {
        return fit.coverage(Level.uprightAt(x), Math.min(fromY, toY), Math.max(fromY, toY), OUTLINE_PART);
    }

    /** The share of a level line, between two places, on which there is ink of an outline. */
    double levelInk(double y, double fromX, double toX) {
        return fit.coverage(Level.levelAt(y), fromX, toX, OUTLINE_PART);
    }

    /** The view of a page; empty where no family of long sloping lines is found. */
    static Optional<DrawingView> of(LevelPage page) {
        return of(page.ink(), page.photograph() ? EVENINGS : 0);
    }

    private static Optional<DrawingView> of(InkImage page, int evenings) {
        StrokeFinder finder = new StrokeFinder(StrokeSettings.usual());
        for (double direction : SlopeDirection.candidates(page, FLATTEST_DEGREES, STEEPEST_DEGREES)) {
            boolean mirrored = direction < 0;
            InkImage ink = mirrored ? mirror(page) : page;
            List<Stroke> sloping = finder.find(ink, Math.abs(direction));
            List<Stroke> longOnes = sloping.stream()
                    .filter(stroke -> stroke.length() >= LONG_MM && stroke.coverage() > 0.6)
                    .toList();
            if (longOnes.size() < 2) {
                continue;
            }
            Strokes strokes = new Strokes(sloping, finder.find(ink, 0), finder.find(ink, 90));
            Optional<InkStrength> strength =
                    evenings > 0 ? InkStrength.of(strokes.all(), ink.widthMm(), ink.heightMm()) : Optional.empty();
            if (strength.isPresent()) {
                InkImage even = strength.get().evened(ink);
                return of(mirrored ? mirror(even) : even, evenings - 1);
            }
            double outlineInk = outlineInk(longOnes);
            double leastInk = OUTLINE_PART * outlineInk;
            return Optional.of(new DrawingView(
                    ink,
                    mirrored,
                    Math.abs(direction),
                    outlineInk,
                    new EdgeFit(ink, outlineInk),
                    runs(along(strokes.sloping, Math.abs(direction), 2.5), leastInk),
                    runs(along(strokes.level, 0, MOST_OFF_LEVEL_DEGREES), 0.8 * leastInk),
                    runs(along(strokes.upright, 90, MOST_OFF_LEVEL_DEGREES), 0.8 * leastInk)));
        }
        return Optional.empty();
    }

    private record Strokes(List<Stroke> sloping, List<Stroke> level, List<Stroke> upright) {

        List<Stroke> all() {
            return Stream.of(sloping, level, upright).flatMap(List::stream).toList();
        }
    }

    /** The strokes that run truly enough in a direction to be drawn with it; a leader line does not. */
    private static List<Stroke> along(List<Stroke> strokes, double directionDegrees, double mostOffDegrees) {
        return strokes.stream()
                .filter(stroke -> Angles.between(stroke.centreLine().inclinationDegrees(), directionDegrees) <= mostOffDegrees)
                .toList();
    }

    /** The median ink of the darker long sloping strokes, which are the rafter's and the covering's outlines. */
    private static double outlineInk(List<Stroke> longOnes) {
        double longest = longOnes.get(0).length();
        double[] inks = longOnes.stream()
                .filter(stroke -> stroke.length() > 0.5 * longest)
                .mapToDouble(stroke -> stroke.inkAlong().median())
                .sorted()
                .toArray();
        double darkest = inks[inks.length - 1];
        double[] outlines = Arrays.stream(inks).filter(ink -> ink > 0.6 * darkest).toArray();
        return outlines[outlines.length / 2];
    }

    private static List<Run> runs(List<Stroke> strokes, double leastInk) {
        List<Run> runs = new ArrayList<>();
        for (Stroke stroke : strokes) {
            runs.addAll(Run.of(stroke, leastInk));
        }
        runs.sort(Comparator.comparingDouble(Run::length)
                .reversed()
                .thenComparing(run -> run.segment().start().x())
                .thenComparing(run -> run.segment().start().y()));
        return runs;
    }

    private static InkImage mirror(InkImage page) {
        int width = page.widthPx();
        byte[] from = page.bytes();
        byte[] to = new byte[from.length];
        for (int row = 0; row < page.heightPx(); row++) {
            int base = row * width;
            for (int column = 0; column < width; column++) {
                to[base + width - 1 - column] = from[base + column];
            }
        }
        return new InkImage(width, page.heightPx(), page.pixelsPerMm(), to);
    }

    /** Brings a segment of this view back to the page. */
    Segment onPage(Segment segment) {
        if (!mirrored) {
            return segment;
        }
        double width = ink.widthMm();
        return Segment.between(
                width - segment.start().x(), segment.start().y(), width - segment.end().x(), segment.end().y());
    }

    /** Fits a run's own ink, leaving out its last bit at both ends, where other lines meet it. */
    Edge fit(Run run, double directionDoubtDegrees) {
        Segment segment = run.segment();
        double trim = Math.min(1.0, segment.length() / 5);
        Line line = segment.line();
        return fit.fit(line, trim, segment.length() - trim, directionDoubtDegrees)
                .within(-segment.length() / 2, segment.length() / 2);
    }
}
