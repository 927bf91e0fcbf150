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
    record Gutter(Edge outer, Edge bottom, RimReader.Rim rim, Edge inner) {

        /** The same gutter with its inner side placed anew. */
        Gutter withInner(Edge placed) {
            return new Gutter(outer, bottom, rim, placed.lessSure(INNER_SIDE_SIGMA_MM));
        }

        /** The same gutter with its rim as far as it is told beside a line that may run on where it ends. */
        Gutter beside(Edge other) {
            return new Gutter(outer, bottom, rim.beside(other, outer), inner);
        }
    }

    /**
     * What was found.
     *
     * @param doubt why it cannot be told whether, or which, gutter was drawn
     */
    record Found(Optional<Gutter> gutter, Optional<String> doubt) {}

    /** A reading: that no gutter was drawn, or its bottom's height, its outer side's place and its rim's. */
    private record Box(boolean isNone, double width, double bottomY, double x, UprightEnds.End rim, Optional<Edge> upright)
            implements Reading {

        static final Box NONE = new Box(true, 0, 0, 0, new UprightEnds.End(0, 0, 0), Optional.empty());

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of(
                    "gutter.width", isNone ? Optional.empty() : Optional.of(width),
                    "gutter.depth", isNone ? Optional.empty() : Optional.of(rimY() - bottomY));
        }

        boolean sharesSidesWith(Box other) {
            return isNone == other.isNone
                    && Math.abs(other.x - x) < SAME_MM
                    && Math.abs(other.bottomY - bottomY) < SAME_MM;
        }

        boolean saysTheSameAs(Box other) {
            return sharesSidesWith(other) && Math.abs(other.rimY() - rimY()) < SAME_MM;
        }

        double rimY() {
            return rim.yMm();
        }
    }

    private static final Weights WEIGHTS = Weights.of("gutter", List.of(
            "above-covering", "width", "depth", "runs-on-below", "runs-on-left", "bottom-whole", "side-whole", "side-beyond",
            "bottom-coverage", "bottom-ink", "side-coverage", "side-ink", "end-off-side", "parting", "ink-before", "ink-after",
            "mean-before", "mean-after", "rim-in-covering-bottom", "rim-in-covering-top", "at-barge-end", "beyond-barge-end",
            "rim-above-covering", "shallow", "none-asked-inked", "none-asked-vacant", "none-not-asked"));

    private static final double SAME_MM = 0.35;
    /** The half breadth of the covering's lines. */
    private static final double COVERING_LINE_MM = 0.4;

    /** A gutter's own inner side and the fascia's face are drawn over one another, a few tenths apart. */
    private static final double INNER_SIDE_SIGMA_MM = 0.07;

    private static final double MOST_COST = 4;

    /** Broken lead leaves gaps of a few millimetres. */
    private static final double LONGEST_GAP_MM = 3.6;

    private static final double LEAST_RESUMED_MM = 1.5;
    private static final double STEP_MM = 0.3;
    private static final double VACANCY_STEP_MM = 0.2;
    /** However large the place where a gutter hangs is: a line 3 mm long leaves more ink than this. */
    private static final double MOST_STRAY_INK_MM2 = 0.9;

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
        GutterTrace trace = new GutterTrace(place, faceX);
        boolean isClear = isVacant || !trace.isThere(lowY - 10, highY + 4);
        Choice<Box> choice = new Choice<>(WEIGHTS);
        choice.offer(Box.NONE, none(isAsked, isClear));
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), lowY - 10, highY + 4, Level.RIGHT, y -> -2.6, y -> -0.4, 0.4);
        rows.forEach(row -> offer(choice, row));
        beyondAGap(rows, lowY - 10, highY + 4).forEach(row -> offer(choice, row));
        place.log().made(choice);
        Box best = choice.best().orElseThrow();
        boolean isSure = choice.probability(best::sharesSidesWith) >= Choice.LIKELY;
        if (best.isNone) {
            boolean isOpen = (!isClear || !isSure) && trace.hasUpright(lowY - 10, highY + 4, bargeEnd);
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

    private static double[] none(boolean isAsked, boolean isClear) {
        double[] traits = new double[27];
        traits[24] = isAsked && !isClear ? 1 : 0;
        traits[25] = isAsked && isClear ? 1 : 0;
        traits[26] = isAsked ? 0 : 1;
        return traits;
    }

    /** Bottoms of which the lead broke beside the face, so that they are seen only further out. */
    private List<Crossing> beyondAGap(List<Crossing> rows, double fromY, double toY) {
        return place.crossLines()
                .find(Level.uprightAt(faceX), fromY, toY, Level.RIGHT, y -> -2.4 - LONGEST_GAP_MM, y -> -2.4, 0.6)
                .stream()
                .filter(row -> rows.stream().noneMatch(near -> Math.abs(near.position() - row.position()) < SAME_MM))
                .map(row -> {
                    double beside = place.view().levelInk(row.position(), faceX - 2.6, faceX - 0.4);
                    return new Crossing(row.position(), beside * row.ink(), beside);
                })
                .toList();
    }

    private void offer(Choice<Box> choice, Crossing row) {
        double unbroken = leftEnd(row.position(), faceX - 1, 1);
        double broken = leftEnd(row.position(), faceX - 1, LONGEST_GAP_MM);
        offer(choice, row, unbroken);
        if (broken < unbroken - SAME_MM) {
            offer(choice, row, broken);
        }
    }

    private void offer(Choice<Box> choice, Crossing row, double leftX) {
        double bottomY = row.position();
        if (faceX - leftX < 1.2) {
            return;
        }
        double widest = 3 * place.expectation().exactOr("gutter.width", 6) + 4;
        List<Crossing> sides = place.crossLines().find(
                Level.levelAt(bottomY), Math.max(leftX - 1.5, faceX - widest), faceX - 1.2, Level.UP, x -> 0.4, x -> 2.8, 0.4);
        for (Crossing side : sides) {
            double x = side.position();
            Edge upright = LeaningUpright.followed(place.view(), x, bottomY);
            UprightEnds ends = new UprightEnds(place.view().ink(), upright, bottomY);
            for (UprightEnds.End rim : ends.ends()) {
                choice.offer(
                        new Box(false, faceX - x, bottomY, x, rim, Optional.of(upright)),
                        traits(row, side, leftX, upright, ends, rim));
            }
        }
    }

    private double[] traits(Crossing row, Crossing side, double leftX, Edge upright, UprightEnds ends, UprightEnds.End rim) {
        double rimY = rim.yMm();
        double[] around = ends.inkAround(rim);
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
            place.view().uprightInk(x, bottomY - 2.5, bottomY - 1.2),
            place.view().levelInk(bottomY, x - 2.2, x - 0.8),
            place.view().levelInk(bottomY, x + 0.4, faceX - 0.4),
            LeaningUpright.inkAlong(place.view(), upright, bottomY + 0.4, rimY - 0.2),
            LeaningUpright.inkAlong(place.view(), upright, rimY + 0.4, rimY + 1.8),
            row.coverage(),
            Math.min(1, row.ink() / outline),
            side.coverage(),
            Math.min(1, side.ink() / outline),
            Math.min(3, Math.abs(leftX - x)),
            Math.min(3, rim.parted()),
            around[0] / outline,
            around[1] / outline,
            around[2] / outline,
            around[3] / outline,
            Math.abs(clearOfCovering) < COVERING_LINE_MM ? 1 : 0,
            place.roof().coveringTop().map(edge -> Math.abs(edge.yAt(x) - rimY) < COVERING_LINE_MM).orElse(false) ? 1 : 0,
            Math.abs(fromBarge) < SAME_MM ? 1 : 0,
            fromBarge < -0.5 ? 1 : 0,
            clearOfCovering < -0.3 ? 1 : 0,
            rimY - bottomY < 1.4 ? 1 : 0,
            0, 0, 0
        };
    }

    /** How far to the left a level line goes on; beyond a gap only where it goes on for some way. */
    private double leftEnd(double y, double fromX, double longestGap) {
        double blank = 0;
        double resumed = 0;
        double end = fromX;
        for (double x = fromX; blank < longestGap && x > fromX - 40; x -= STEP_MM) {
            boolean inked = place.view().fit().coverage(Level.levelAt(y), x - STEP_MM, x, 0.4) > 0.5;
            resumed = inked ? resumed + STEP_MM : 0;
            if (inked && (blank < 1 || resumed >= LEAST_RESUMED_MM)) {
                end = x - STEP_MM;
                blank = 0;
            } else {
                blank += STEP_MM;
            }
        }
        return end;
    }

    private Gutter gutter(Box reading, Optional<Double> rivalY, Edge face) {
        RimReader rims = new RimReader(place.view(), reading.x, reading.bottomY);
        RimReader.Rim rim = rims.read(reading.upright.orElseThrow(), reading.rim, rivalY);
        Edge bottom = place.view().fit().fit(Level.levelAt(reading.bottomY), reading.x + 0.4, faceX - 0.4, 0.12, 0.25);
        Edge outer = rims.lineUpTo(rim.y());
        double bottomY = bottom.middle().y();
        Edge inner = place.view().fit().fit(
                Level.uprightAt(face.xAt(bottomY + 1)), bottomY + 0.5, Math.max(bottomY + 2, rim.y() - 0.5), 0.12, 0.25);
        return new Gutter(outer, bottom, rim, inner.lessSure(INNER_SIDE_SIGMA_MM));
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
        for (double x = faceX - 1.3 * width; x < faceX - 0.7; x += VACANCY_STEP_MM) {
            for (double y = middle - depth; y < middle + depth; y += VACANCY_STEP_MM) {
                if (isKnown(place, new Point(x, y), bargeEnd, bargeBottom)) {
                    continue;
                }
                counted++;
                inked += place.view().ink().at(x, y) > 0.45 * place.view().outlineInk() ? 1 : 0;
            }
        }
        double inkedMm2 = inked * VACANCY_STEP_MM * VACANCY_STEP_MM;
        return counted > 200 && inked / (double) counted < 0.02 && inkedMm2 < MOST_STRAY_INK_MM2;
    }

    private static boolean isKnown(EavesPlace place, Point point, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        boolean isUnderCovering = place.roof().coveringBottom().map(edge -> point.y() > edge.yAt(point.x()) - 1).orElse(false);
        boolean isOfBargeBoard = bargeEnd.map(edge -> Math.abs(edge.line().distanceTo(point)) < 0.6).orElse(false)
                || bargeBottom.map(edge -> edge.line().distanceTo(point) < 0.6).orElse(false);
        return isUnderCovering || isOfBargeBoard || Math.abs(place.rafterBottom().line().distanceTo(point)) < 0.6;
    }
}
