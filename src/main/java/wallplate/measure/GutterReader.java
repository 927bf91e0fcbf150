package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * Finds the gutter: a level bottom that reaches the fascia's face and an upright at its other end, whose free upper end
 * is the rim.
 */
final class GutterReader {

    /**
     * The gutter's lines.
     *
     * @param inner its own inner side, drawn over the fascia's face
     */
    record Gutter(Edge outer, Edge bottom, Rim rim, Edge inner) {}

    /**
     * The height of the gutter's free upper end.
     *
     * @param sigma one standard deviation, in millimetres
     * @param doubt why it cannot be told
     * @param rivalY the height that is meant where it is another
     */
    record Rim(double y, double sigma, Optional<String> doubt, Optional<Double> rivalY) {}

    /**
     * What was found.
     *
     * @param doubt why it cannot be told whether, or which, gutter was drawn
     */
    record Found(Optional<Gutter> gutter, Optional<String> doubt) {}

    /** A reading: that no gutter was drawn, or its bottom's height, its outer side's place and its rim's. */
    private record Box(boolean isNone, double width, double bottomY, double x, double rimY, int rimAt) implements Reading {

        static final Box NONE = new Box(true, 0, 0, 0, 0, 0);

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of(
                    "gutter.width", isNone ? Optional.empty() : Optional.of(width),
                    "gutter.depth", isNone ? Optional.empty() : Optional.of(rimY - bottomY));
        }

        boolean sharesSidesWith(Box other) {
            return isNone == other.isNone
                    && Math.abs(other.x - x) < SAME_MM
                    && Math.abs(other.bottomY - bottomY) < SAME_MM;
        }

        boolean saysTheSameAs(Box other) {
            return sharesSidesWith(other) && Math.abs(other.rimY - rimY) < SAME_MM;
        }
    }

    private static final Weights WEIGHTS = Weights.of("gutter", List.of(
            "above-covering", "width", "depth", "runs-on-below", "runs-on-left", "bottom-whole", "side-whole", "side-beyond",
            "bottom-coverage", "bottom-ink", "side-coverage", "side-ink", "end-off-side", "parting", "ink-before", "ink-after",
            "mean-before", "mean-after", "rim-in-covering-bottom", "rim-in-covering-top", "at-barge-end", "beyond-barge-end",
            "rim-above-covering", "shallow", "none-asked-inked", "none-asked-vacant", "none-not-asked"));

    private static final double SAME_MM = 0.35;
    /** How far the mark of a pencil line runs on beyond where the point's centre stopped, at half darkness. */
    private static final double ROUND_END_MM = 0.13;

    /** No gutter is drawn deeper than this at the scales in use. */
    private static final double RIM_REACH_MM = 18;

    private static final double STEP_MM = 0.1;
    private static final int MOST_RIMS = 5;
    /** A free end that lies in another line of this half breadth cannot be seen. */
    private static final double HIDDEN_MM = 0.4;

    private static final double HIDDEN_SIGMA_MM = 0.2;

    /** A gutter's own inner side and the fascia's face are drawn over one another, a few tenths apart. */
    private static final double INNER_SIDE_SIGMA_MM = 0.07;

    private static final double MOST_COST = 4;

    private final EavesPlace place;
    private final double faceX;
    private final Optional<Edge> bargeEnd;

    /**
     * A reader of the gutter.
     *
     * @param faceX where the fascia's face stands
     * @param bargeEnd what was taken for the barge board's end, and may be the gutter's side
     */
    GutterReader(EavesPlace place, double faceX, Optional<Edge> bargeEnd) {
        this.place = place;
        this.faceX = faceX;
        this.bargeEnd = bargeEnd;
    }

    /**
     * Reads the gutter.
     *
     * @param lowY the height of the rafter's lower corner, {@code highY} of its upper one
     * @param face the fascia's face, or the plumb cut
     * @param isVacant whether the place where a gutter hangs shows no more ink than the lines already known there
     */
    Found read(double lowY, double highY, Edge face, boolean isVacant) {
        boolean isAsked = place.expectation().asksPart("gutter");
        Choice<Box> choice = new Choice<>(WEIGHTS);
        choice.offer(Box.NONE, none(isAsked, isVacant));
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), lowY - 10, highY + 4, Level.RIGHT, y -> -2.6, y -> -0.4, 0.4);
        rows.forEach(row -> offer(choice, row));
        place.log().made(WEIGHTS.name(), choice);
        Box best = choice.best().orElseThrow();
        boolean isSure = choice.probability(best::sharesSidesWith) >= Choice.SURE;
        if (best.isNone) {
            boolean isOpen = !isVacant || !isSure;
            return new Found(Optional.empty(), isOpen
                    ? Optional.of("there is ink where the gutter should hang, but no clear gutter")
                    : Optional.empty());
        }
        Optional<Double> rival = choice.probability(best::saysTheSameAs) >= Choice.SURE
                ? Optional.empty()
                : choice.bestWithout(best::saysTheSameAs).filter(best::sharesSidesWith).map(Box::rimY);
        return new Found(
                Optional.of(gutter(best, rival, face)),
                isSure ? Optional.empty() : Optional.of("lines near the fascia could be read as different gutters"));
    }

    private static double[] none(boolean isAsked, boolean isVacant) {
        double[] traits = new double[27];
        traits[24] = isAsked && !isVacant ? 1 : 0;
        traits[25] = isAsked && isVacant ? 1 : 0;
        traits[26] = isAsked ? 0 : 1;
        return traits;
    }

    private void offer(Choice<Box> choice, Crossing row) {
        double bottomY = row.position();
        double leftX = leftEnd(bottomY, faceX - 1);
        if (faceX - leftX < 1.2) {
            return;
        }
        double widest = 3 * place.expectation().exactOr("gutter.width", 6) + 4;
        List<Crossing> sides = place.crossLines().find(
                Level.levelAt(bottomY), Math.max(leftX - 1.5, faceX - widest), faceX - 1.2, Level.UP, x -> 0.4, x -> 2.8, 0.4);
        for (Crossing side : sides) {
            double x = side.position();
            double[] heights = heights(bottomY);
            double[] ink = middleInk(x, heights);
            Parting parting = new Parting(ink);
            List<Integer> rims = parting.places(MOST_RIMS);
            for (int at : rims) {
                double y = heights[at] - STEP_MM / 2 - ROUND_END_MM;
                double parted = Math.log((1 + parting.error(at)) / (1 + parting.error(rims.get(0))));
                choice.offer(new Box(false, faceX - x, bottomY, x, y, at), traits(row, side, leftX, y, ink, at, parted));
            }
        }
    }

    private double[] traits(Crossing row, Crossing side, double leftX, double rimY, double[] ink, int at, double parted) {
        double bottomY = row.position();
        double x = side.position();
        double outline = place.view().outlineInk();
        Optional<Edge> covering = place.roof().coveringBottom();
        double clearOfCovering = covering.map(edge -> edge.yAt(x) - rimY).orElse(5.0);
        double fromBarge = bargeEnd.map(end -> x - end.xAt(bottomY)).orElse(9.0);
        return new double[] {
            covering.map(edge -> bottomY > edge.yAt(x) - 0.8).orElse(false) ? 1 : 0,
            Math.min(MOST_COST, place.expectation().cost("gutter.width", faceX - x)),
            Math.min(MOST_COST, place.expectation().cost("gutter.depth", rimY - bottomY)),
            place.uprightInk(x, bottomY - 2.5, bottomY - 1.2),
            place.levelInk(bottomY, x - 2.2, x - 0.8),
            place.levelInk(bottomY, x + 0.4, faceX - 0.4),
            place.uprightInk(x, bottomY + 0.4, rimY - 0.2),
            place.uprightInk(x, rimY + 0.4, rimY + 1.8),
            row.coverage(),
            Math.min(1, row.ink() / outline),
            side.coverage(),
            Math.min(1, side.ink() / outline),
            Math.min(3, Math.abs(leftX - x)),
            Math.min(3, parted),
            mean(ink, Math.max(0, at - 12), at - 1) / outline,
            mean(ink, at + 1, Math.min(ink.length, at + 12)) / outline,
            mean(ink, 0, at) / outline,
            mean(ink, at, ink.length) / outline,
            Math.abs(clearOfCovering) < HIDDEN_MM ? 1 : 0,
            place.roof().coveringTop().map(edge -> Math.abs(edge.yAt(x) - rimY) < HIDDEN_MM).orElse(false) ? 1 : 0,
            Math.abs(fromBarge) < SAME_MM ? 1 : 0,
            fromBarge < -0.5 ? 1 : 0,
            clearOfCovering < -0.3 ? 1 : 0,
            rimY - bottomY < 1.4 ? 1 : 0,
            0, 0, 0
        };
    }

    private double leftEnd(double y, double fromX) {
        double blank = 0;
        double end = fromX;
        for (double x = fromX; blank < 1 && x > fromX - 40; x -= 0.3) {
            boolean inked = place.view().fit().coverage(Level.levelAt(y), x - 0.3, x, 0.4) > 0.5;
            blank = inked ? 0 : blank + 0.3;
            if (inked) {
                end = x - 0.3;
            }
        }
        return end;
    }

    private Gutter gutter(Box reading, Optional<Double> rivalY, Edge face) {
        Rim rim = rim(reading, rivalY);
        Edge bottom = place.view().fit().fit(Level.levelAt(reading.bottomY), reading.x + 0.4, faceX - 0.4, 0.12, 0.25);
        Edge outer = place.view().fit().fit(Level.uprightAt(reading.x), reading.bottomY + 0.4, rim.y - 0.3, 0.12, 0.25);
        double bottomY = bottom.middle().y();
        Edge inner = place.view().fit().fit(
                Level.uprightAt(face.xAt(bottomY + 1)), bottomY + 0.5, Math.max(bottomY + 2, rim.y - 0.5), 0.12, 0.25);
        return new Gutter(outer, bottom, rim, inner.lessSure(INNER_SIDE_SIGMA_MM));
    }

    /** The chosen height, refined to where the darkness is half-way between that of the side and that above it. */
    private Rim rim(Box reading, Optional<Double> rivalY) {
        double[] heights = heights(reading.bottomY);
        double[] ink = middleInk(reading.x, heights);
        int end = reading.rimAt;
        double half = (mean(ink, Math.max(0, end - 25), Math.max(3, end - 4))
                        + mean(ink, Math.min(ink.length - 6, end + 4), Math.min(ink.length, end + 14)))
                / 2;
        for (int at = Math.max(2, end - 6); at < Math.min(ink.length - 3, end + 7); at++) {
            double smooth = mean(ink, at - 2, at + 2);
            double next = mean(ink, at - 1, at + 3);
            if (smooth >= half && next < half) {
                double part = (smooth - half) / Math.max(1e-6, smooth - next);
                // The pencil's point stopped before the end of the mark, which is as round as the line is broad.
                return doubted(heights[at] + (part - 0.5) * STEP_MM - ROUND_END_MM, 0.1, reading, rivalY);
            }
        }
        return doubted(reading.rimY, 0.2, reading, rivalY);
    }

    /** The height; in doubt where another is as likely, less sure where the covering's line hides the free end. */
    private Rim doubted(double y, double sigma, Box reading, Optional<Double> rivalY) {
        Optional<Double> coveringY = place.roof().coveringBottom().map(edge -> edge.yAt(reading.x));
        if (rivalY.isPresent()) {
            return new Rim(y, sigma, Optional.of("the upper end of the gutter's outer line cannot be told: its ink is broken"), rivalY);
        }
        boolean isHidden = coveringY.map(height -> Math.abs(height - y) < HIDDEN_MM + ROUND_END_MM).orElse(false);
        return new Rim(y, isHidden ? HIDDEN_SIGMA_MM : sigma, Optional.empty(), Optional.empty());
    }

    private static double[] heights(double bottomY) {
        double[] heights = new double[(int) Math.round(RIM_REACH_MM / STEP_MM)];
        for (int at = 0; at < heights.length; at++) {
            heights[at] = bottomY + 0.4 + (at + 0.5) * STEP_MM;
        }
        return heights;
    }

    /**
     * The ink that an upright itself has at some heights: what lies on its middle beyond what lies on both sides of it,
     * so that a line which crosses it does not count.
     */
    private double[] middleInk(double x, double[] heights) {
        double[] middle = new double[heights.length];
        for (int at = 0; at < heights.length; at++) {
            double y = heights[at];
            double here = (inkAt(x - 0.08, y) + inkAt(x, y) + inkAt(x + 0.08, y)) / 3;
            middle[at] = Math.max(0, here - Math.min(besideInk(x - 0.45, y), besideInk(x + 0.45, y)));
        }
        return middle;
    }

    private double besideInk(double x, double y) {
        return Math.max(inkAt(x, y), Math.max(inkAt(x, y + 0.25), inkAt(x, y - 0.25)));
    }

    private double inkAt(double x, double y) {
        return place.view().ink().at(x, y);
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int index = from; index < to; index++) {
            sum += values[index];
        }
        return to > from ? sum / (to - from) : 0;
    }

    /**
     * Whether the place where a gutter hangs shows no more ink than the lines already known there. On a steep roof known
     * lines may take up the whole place, which then says nothing.
     */
    static boolean isVacant(
            EavesPlace place, double faceX, double lowY, double highY, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        double width = place.expectation().exactOr("gutter.width", 6);
        double depth = place.expectation().exactOr("gutter.depth", 5);
        double middle = (lowY + highY) / 2;
        int inked = 0;
        int counted = 0;
        for (double x = faceX - 1.3 * width; x < faceX - 0.7; x += 0.2) {
            for (double y = middle - depth; y < middle + depth; y += 0.2) {
                if (isKnown(place, new Point(x, y), bargeEnd, bargeBottom)) {
                    continue;
                }
                counted++;
                inked += place.view().ink().at(x, y) > 0.45 * place.view().outlineInk() ? 1 : 0;
            }
        }
        return counted > 200 && inked / (double) counted < 0.02;
    }

    private static boolean isKnown(EavesPlace place, Point point, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        boolean isUnderCovering = place.roof().coveringBottom().map(edge -> point.y() > edge.yAt(point.x()) - 1).orElse(false);
        boolean isOfBargeBoard = bargeEnd.map(edge -> Math.abs(edge.line().distanceTo(point)) < 0.6).orElse(false)
                || bargeBottom.map(edge -> edge.line().distanceTo(point) < 0.6).orElse(false);
        return isUnderCovering || isOfBargeBoard || Math.abs(place.rafterBottom().line().distanceTo(point)) < 0.6;
    }
}
