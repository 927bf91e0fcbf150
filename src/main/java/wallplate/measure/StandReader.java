package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * Tells which upright at the rafter's outer end is its plumb cut and which the fascia's face: the rafter's two edges end
 * at the cut, give or take an overshot corner, the board's closing lines lie between cut and face, and the sizes speak
 * for or against.
 */
final class StandReader {

    /**
     * The uprights that were chosen.
     *
     * @param placeProbability how likely the rafter ends there or thereabouts
     * @param cutProbability how likely the cut is the right one
     * @param probability how likely both are
     */
    record Stand(Crossing cut, Optional<Crossing> face, double placeProbability, double cutProbability, double probability) {}

    private record Pair(Crossing cut, Optional<Crossing> face, Optional<Double> overhang) implements Reading {

        @Override
        public Map<String, Optional<Double>> sizes() {
            Map<String, Optional<Double>> sizes = new HashMap<>();
            sizes.put("fascia.thickness", face.map(found -> cut.position() - found.position()));
            overhang.ifPresent(length -> sizes.put("rafter.overhang", overhang));
            return sizes;
        }

        double thickness() {
            return face.map(found -> cut.position() - found.position()).orElse(0.0);
        }

        boolean standsBeside(Pair other) {
            return Math.abs(other.cut.position() - cut.position()) < THICKEST_MM;
        }

        boolean sharesCutWith(Pair other) {
            return Math.abs(other.cut.position() - cut.position()) < SAME_MM;
        }

        boolean saysTheSameAs(Pair other) {
            return sharesCutWith(other)
                    && face.isPresent() == other.face.isPresent()
                    && Math.abs(other.thickness() - thickness()) < SAME_MM;
        }
    }

    private static final Weights WEIGHTS = Weights.of("stand", List.of(
            "cut-along-rafter", "top-off", "top-short", "bottom-off", "bottom-short", "overhang", "below-cut",
            "outside", "alone-outside", "between", "alone-asked", "alone-not-asked", "alone-below", "thickness",
            "face-coverage", "face-ink", "face-is-barge", "closed-above", "closed-below", "face-along-rafter",
            "closing", "not-closed", "face-runs-on", "alone-gutter", "overhang-where-both-end"));

    /** From "thickness" to "face-runs-on"; nought where there is no board. */
    private static final int BOARD_TRAITS = 10;

    private static final double SAME_MM = 0.35;
    private static final double THINNEST_MM = 0.5;
    private static final double THICKEST_MM = 5.5;
    private static final double BESIDE_MM = 0.4;
    /** Where an edge ends, against the cut, is counted in steps of this, three of them at most. */
    private static final double END_STEP_MM = 0.6;

    private static final double MOST_COST = 4;
    private static final double MOST_LEAD = 6;
    private static final double ABOVE_COVERING_MM = 0.8;
    private static final double CLEAR_OF_LINE_MM = 0.4;
    /** Less room between rafter and covering says nothing of what stands there. */
    private static final double LEAST_ABOVE_RAFTER_MM = 1.5;

    private static final double MOST_OF_LENGTH = 0.7;
    /** A label or a leader may have broken the cut. */
    private static final double LEAST_COVERAGE = 0.5;

    private final EavesPlace place;
    private final Edge top;
    private final Edge bottom;

    StandReader(EavesPlace place) {
        this.place = place;
        this.top = place.rafterTop();
        this.bottom = place.rafterBottom();
    }

    /**
     * Reads both, at the likeliest of the places where the rafter may end: which of them it is shows only in what stands
     * there, so all their readings are weighed against one another.
     *
     * @param ends about where the rafter may end, the likeliest first
     * @param bargeEnd what may be the barge board's end where the rafter ends there, where the task asks for one
     */
    Optional<Stand> read(List<Double> ends, DoubleFunction<Optional<Edge>> bargeEnd) {
        Choice<Pair> choice = new Choice<>(WEIGHTS);
        for (double endX : ends) {
            // A reading that was offered from a place before, offered again, would count twice.
            List<Pair> known = choice.options().stream().map(Choice.Option::reading).toList();
            Uprights uprights = uprightsAt(endX, bargeEnd.apply(endX));
            pairs(uprights.all).stream()
                    .filter(pair -> known.stream().noneMatch(pair::saysTheSameAs))
                    .forEach(pair -> choice.offer(pair, traits(pair, uprights)));
        }
        place.log().made(choice);
        return choice.best().map(best -> new Stand(
                best.cut,
                best.face,
                choice.probability(best::standsBeside),
                choice.probability(best::sharesCutWith),
                choice.probability(best::saysTheSameAs)));
    }

    /**
     * What stands about a place where the rafter may end.
     *
     * @param alongRafter the uprights that are dark over the rafter's whole depth
     * @param all these, and those that are dark over a part of it or above it, from the left
     * @param endTop where the rafter's top ends there, {@code endBottom} where its underside does
     */
    private record Uprights(
            List<Crossing> alongRafter, List<Crossing> all, double endTop, double endBottom, Optional<Edge> bargeEnd) {}

    private Uprights uprightsAt(double endX, Optional<Edge> bargeEnd) {
        List<Crossing> columns = columns(endX, 0, 0.12, 0.88);
        List<Crossing> higher = facesToo(columns, columns(endX, 0, 0.5, 1.2));
        // A board's face ends at the heights of the plumb cut behind it, which on a steep roof differ much from its own.
        double thickness = place.expectation().exactOr("fascia.thickness", 1.5);
        List<Crossing> besides = facesToo(facesToo(higher, columns(endX, thickness, 0.12, 0.88)), columns(endX, thickness, 0.45, 1));
        List<Crossing> all = facesToo(besides, aboveRafter(endX));
        return new Uprights(columns, all, inkEnd(top, columns, endX + 6), inkEnd(bottom, columns, endX + 6), bargeEnd);
    }

    /** Every upright clear of the wall as the cut, alone and with each that may be the face before it. */
    private List<Pair> pairs(List<Crossing> uprights) {
        double wallX = place.wall().outer().map(outer -> outer.middle().x()).orElse(Double.POSITIVE_INFINITY);
        List<Pair> pairs = new ArrayList<>();
        for (Crossing cut : uprights) {
            if (cut.position() > wallX - BESIDE_MM) {
                continue;
            }
            pairs.add(pair(cut, Optional.empty()));
            for (Crossing face : uprights) {
                double between = cut.position() - face.position();
                if (between >= THINNEST_MM && between <= THICKEST_MM) {
                    pairs.add(pair(cut, Optional.of(face)));
                }
            }
        }
        return pairs;
    }

    /** The uprights of a board that is drawn too short, and so stands between the rafter's top and the covering alone. */
    private List<Crossing> aboveRafter(double endX) {
        if (place.roof().coveringBottom().isEmpty()) {
            return List.of();
        }
        Edge covering = place.roof().coveringBottom().get();
        DoubleUnaryOperator low = x -> top.yAt(x) + CLEAR_OF_LINE_MM;
        DoubleUnaryOperator high = x -> covering.yAt(x) - CLEAR_OF_LINE_MM;
        if (high.applyAsDouble(endX) - low.applyAsDouble(endX) < LEAST_ABOVE_RAFTER_MM) {
            return List.of();
        }
        return place.crossLines()
                .find(Level.levelAt(0), endX - 9, endX + 7, Level.UP, low, high, MOST_OF_LENGTH)
                .stream()
                .filter(column -> place.isPlumb(
                        column.position(), low.applyAsDouble(column.position()), high.applyAsDouble(column.position())))
                .toList();
    }

    /**
     * The uprights near the rafter's end that are dark between two parts of its height, 0 its underside and 1 its top, as
     * that height is so far to the inside of each.
     */
    private List<Crossing> columns(double endX, double insideMm, double from, double to) {
        return place.crossLines().find(
                Level.levelAt(0),
                endX - 9,
                endX + 7,
                Level.UP,
                x -> bottom.yAt(x + insideMm) + from * (top.yAt(x) - bottom.yAt(x)),
                x -> bottom.yAt(x + insideMm) + to * (top.yAt(x) - bottom.yAt(x)),
                LEAST_COVERAGE);
    }

    private Pair pair(Crossing cut, Optional<Crossing> face) {
        return new Pair(cut, face, place.wall().outer().map(edge -> edge.middle().x() - cut.position()));
    }

    /** A fascia may sit high and leave the rafter's lower corner bare. */
    private static List<Crossing> facesToo(List<Crossing> columns, List<Crossing> higher) {
        List<Crossing> all = new ArrayList<>(columns);
        for (Crossing column : higher) {
            if (columns.stream().noneMatch(other -> Math.abs(other.position() - column.position()) < BESIDE_MM)) {
                all.add(column);
            }
        }
        all.sort(Comparator.comparingDouble(Crossing::position));
        return all;
    }

    /** What speaks for or against a reading, in the order of the weights. */
    private double[] traits(Pair reading, Uprights uprights) {
        double cutX = reading.cut.position();
        double lowY = bottom.yAt(cutX);
        double middleY = place.middleY(cutX);
        boolean isAsked = place.expectation().asksPart("fascia");
        double isAlone = reading.face.isEmpty() ? 1 : 0;
        double outerX = reading.face.map(Crossing::position).orElse(cutX);
        long outside = uprights.all.stream()
                .mapToDouble(Crossing::position)
                .filter(x -> x < outerX - BESIDE_MM && x > cutX - THICKEST_MM)
                .filter(x -> !EavesPlace.standsAt(uprights.bargeEnd, x, middleY, SAME_MM))
                .count();
        long between = uprights.all.stream()
                .mapToDouble(Crossing::position)
                .filter(x -> x > outerX + BESIDE_MM && x < cutX - BESIDE_MM)
                .count();
        double topOff = Math.min(3, Math.abs(uprights.endTop - cutX) / END_STEP_MM);
        double bottomOff = Math.min(3, Math.abs(uprights.endBottom - cutX) / END_STEP_MM);
        double belowCut = place.view().uprightInk(cutX, lowY - 2.6, lowY - 0.6);
        double overhang = overhangCost(cutX);
        double[] ofCut = {
            uprights.alongRafter.contains(reading.cut) ? 1 : 0,
            topOff,
            Math.max(0, Math.min(3, (uprights.endTop - cutX) / END_STEP_MM)),
            bottomOff,
            Math.max(0, Math.min(3, (uprights.endBottom - cutX) / END_STEP_MM)),
            overhang,
            belowCut,
            (1 - isAlone) * outside,
            isAlone * outside,
            between,
            isAsked ? isAlone : 0,
            isAsked ? 0 : isAlone,
            isAlone * belowCut
        };
        double[] ofBoard = reading.face.map(face -> board(face, reading.cut, uprights)).orElse(new double[BOARD_TRAITS]);
        double[] ofBoth = {isAlone * gutterBeside(cutX, uprights), overhang * Math.max(0, 1 - (topOff + bottomOff) / 3)};
        return Stream.of(ofCut, ofBoard, ofBoth).flatMapToDouble(DoubleStream::of).toArray();
    }

    /** How well an upright outside the cut would do as the side of a gutter that hangs on the cut itself, from 0 to 1. */
    private double gutterBeside(double cutX, Uprights uprights) {
        return uprights.all.stream()
                .mapToDouble(face -> cutX - face.position())
                .filter(width -> width > BESIDE_MM)
                .map(width -> 1 - Math.min(MOST_COST, place.expectation().cost("gutter.width", width)) / MOST_COST)
                .max()
                .orElse(0);
    }

    /** What speaks for or against a board between a face and the cut. */
    private double[] board(Crossing face, Crossing cut, Uprights uprights) {
        double faceX = face.position();
        double width = cut.position() - faceX;
        double middleY = place.middleY(faceX);
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), bottom.yAt(faceX) - 13, place.coveringY(cut.position()) + 1, Level.RIGHT,
                y -> 0.25 * width, y -> 0.75 * width, 0.8);
        OptionalDouble closing = closing(face, cut);
        return new double[] {
            Math.min(MOST_COST, place.expectation().cost("fascia.thickness", width)),
            face.coverage(),
            Math.min(1, face.ink() / place.view().outlineInk()),
            EavesPlace.standsAt(uprights.bargeEnd, faceX, middleY, SAME_MM) ? 1 : 0,
            rows.stream().anyMatch(row -> row.position() > middleY) ? 1 : 0,
            rows.stream().anyMatch(row -> row.position() < middleY) ? 1 : 0,
            uprights.alongRafter.contains(face) ? 1 : 0,
            Math.max(-MOST_LEAD, Math.min(MOST_LEAD, closing.orElse(0))) / MOST_LEAD,
            closing.isPresent() ? 0 : 1,
            runsOn(face)
        };
    }

    /** How dark a face is above the covering, as a share of its own ink: as dark as itself a construction line goes on. */
    private double runsOn(Crossing face) {
        double aboveY = place.coveringY(face.position()) + ABOVE_COVERING_MM;
        List<Crossing> above = place.crossLines().find(
                Level.levelAt(aboveY), face.position() - SAME_MM, face.position() + SAME_MM, Level.UP, x -> 0, x -> 3, 0.4);
        return above.stream().mapToDouble(line -> Math.min(1, line.ink() / face.ink())).max().orElse(0);
    }

    private OptionalDouble closing(Crossing face, Crossing cut) {
        double lowY = bottom.yAt(cut.position());
        double highY = top.yAt(cut.position());
        double between = cut.position() - face.position();
        return new FasciaReader(place).closingLead(
                place.upright(face, lowY, highY, between), place.upright(cut, lowY, highY, between), lowY, highY);
    }

    private double overhangCost(double cutX) {
        return place.wall().outer()
                .map(edge -> Math.min(3.5, place.expectation().cost("rafter.overhang", edge.middle().x() - cutX)))
                .orElse(3.0);
    }

    /** Where an edge's own ink ends on the left; what other lines that cross it leave there is not counted. */
    private double inkEnd(Edge edge, List<Crossing> crossings, double fromX) {
        double step = 0.1;
        double blank = 0;
        double startX = inkStart(edge, fromX);
        double end = startX;
        for (double x = startX; blank < 0.7 && x > fromX - 20; x -= step) {
            double here = x;
            if (crossings.stream().anyMatch(crossing -> Math.abs(crossing.position() - here) < SAME_MM)) {
                continue;
            }
            boolean isInked = isInked(edge, x);
            blank = isInked ? 0 : blank + step;
            if (isInked) {
                end = x;
            }
        }
        double last = end;
        return crossings.stream()
                .mapToDouble(Crossing::position)
                .filter(position -> last - position > 0 && last - position < 0.5)
                .findFirst()
                .orElse(last);
    }

    /** Where, from a place to the right, an edge's ink begins: a rafter may end to the right of where it is looked for. */
    private double inkStart(Edge edge, double fromX) {
        double wallX = place.wall().outer().map(outer -> outer.middle().x()).orElse(fromX);
        for (double x = fromX; x < wallX; x += 0.1) {
            if (isInked(edge, x)) {
                return x;
            }
        }
        return fromX;
    }

    private boolean isInked(Edge edge, double x) {
        double position = edge.line().positionOf(new Point(x, edge.yAt(x)));
        return place.view().fit().coverage(edge.line(), position - 0.15, position + 0.15, 0.45) > 0.5;
    }
}
