package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds a wall plate's two sides and the wall's top under it, all three at once. */
final class PlateReader {

    /**
     * The plate's lines, rough.
     *
     * @param top the wall's top, under the plate
     * @param heelY the height of the plate's own top
     * @param heelProbability how likely the heel point is where they set it
     * @param widthProbability how likely they, or others that give the same width, are the right ones
     * @param depthProbability the same for the depth
     * @param probability the same for both
     */
    record Found(
            Crossing top,
            Crossing left,
            Crossing right,
            double heelY,
            double heelProbability,
            double widthProbability,
            double depthProbability,
            double probability) {}

    private record Plate(String part, Crossing top, Crossing left, Crossing right, double heelY) implements Reading {

        double width() {
            return right.position() - left.position();
        }

        double depth() {
            return heelY - top.position();
        }

        boolean sharesHeelWith(Plate other) {
            return Math.abs(other.left.position() - left.position()) < SAME_MM && Math.abs(other.heelY - heelY) < SAME_MM;
        }

        boolean isAsWideAs(Plate other) {
            return Math.abs(other.width() - width()) < SAME_MM;
        }

        boolean isAsDeepAs(Plate other) {
            return Math.abs(other.depth() - depth()) < SAME_MM;
        }

        boolean saysTheSameAs(Plate other) {
            return isAsWideAs(other) && isAsDeepAs(other);
        }

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of(part + ".width", Optional.of(width()), part + ".depth", Optional.of(depth()));
        }
    }

    private static final List<String> TRAITS = List.of(
            "width", "depth", "flush", "heel-off", "left-coverage", "left-ink", "right-coverage", "right-ink", "top-coverage",
            "top-ink", "sides-between", "sides-beside", "crossed", "too-small-to-cross", "left-runs-below", "right-runs-below",
            "on-outer-face", "on-inner-face", "left-overshoots", "right-overshoots");

    private static final Weights UNDER_LEVEL = Weights.of("plate", TRAITS);

    private static final Weights ALONE = Weights.of(
            "lone-plate",
            Stream.concat(TRAITS.stream(), Stream.of("upper-coverage", "upper-ink", "upper-off", "upper-not-seen")).toList());

    private static final double SAME_MM = 0.35;
    private static final double NARROWEST_MM = 1.2;
    private static final double SHALLOWEST_MM = 0.9;
    /** An upright as near as this to a wall's face is that face. */
    private static final double ON_FACE_MM = 0.4;

    private static final double MOST_COST = 4.2;
    private static final double SAME_LINE_MM = 0.6;
    /** How far from the rafter's underside a plate's top is looked for. */
    private static final double MOST_OFF_MM = 6;

    /**
     * Which plate is read.
     *
     * @param part its part in the task
     * @param wall the part of the wall under it
     * @param setInMm how far from the wall's left face, on paper, the task sets it
     */
    record Place(String part, String wall, double setInMm) {}

    private final DrawingView view;
    private final Expectation expectation;
    private final Place place;
    private final Edge rafter;
    private final ChoiceLog log;
    private final Pattern pattern;
    private final CrossLines crossLines;

    PlateReader(DrawingView view, Expectation expectation, Place place, Edge rafter, ChoiceLog log) {
        this.view = view;
        this.expectation = expectation;
        this.place = place;
        this.rafter = rafter;
        this.log = log;
        this.pattern = new Pattern(view);
        this.crossLines = view.crossLines();
    }

    /** The plate between two faces whose top lies at the height of a long level line. */
    Optional<Found> underLevel(Edge outer, Edge inner, double heelY) {
        Choice<Plate> choice = new Choice<>(UNDER_LEVEL);
        offer(choice, outer, inner, heelY, y -> leftOfTop(outer, y), plate -> new double[0]);
        return found(choice);
    }

    /**
     * The plate between two faces on which no level line of the roof lies. The rafter should touch it, but a learner may
     * have drawn it above the rafter's underside or clear of it, so that any level line between the faces may be its top.
     *
     * @param aboutY the height at which the rafter passes over where the plate should be
     */
    Optional<Found> alone(Edge outer, Edge inner, double aboutY) {
        PlateTop plateTop = new PlateTop(view, rafter);
        Choice<Plate> choice = new Choice<>(ALONE);
        for (double heelY : heights(outer, inner, aboutY)) {
            offer(choice, outer, inner, heelY, y -> outer.xAt(y) + 0.4, plate -> {
                double left = plate.left.position();
                PlateTop.Seen seen = plateTop.seen(left, plate.right.position(), heelY);
                return new double[] {
                    seen.coverage(),
                    Math.min(1, seen.ink() / view.outlineInk()),
                    Math.min(MOST_OFF_MM, Math.abs(heelY - rafter.yAt(left))),
                    seen.isClear() ? 0 : 1
                };
            });
        }
        return found(choice);
    }

    private Optional<Found> found(Choice<Plate> choice) {
        log.made(choice);
        return choice.best().map(best -> new Found(
                best.top,
                best.left,
                best.right,
                best.heelY,
                choice.probability(best::sharesHeelWith),
                choice.probability(best::isAsWideAs),
                choice.probability(best::isAsDeepAs),
                choice.probability(best::saysTheSameAs)));
    }

    /** The level lines near a height that may be a plate's top, and that height itself where none of them lies there. */
    private List<Double> heights(Edge outer, Edge inner, double aboutY) {
        double from = outer.xAt(aboutY) + place.setInMm;
        double width = Math.min(expectation.exactOr(place.part + ".width", 5), inner.xAt(aboutY) - from);
        List<Double> heights = new ArrayList<>();
        crossLines.find(
                        Level.uprightAt(from), aboutY - MOST_OFF_MM, aboutY + MOST_OFF_MM, Level.RIGHT,
                        y -> 0.25 * width, y -> 0.75 * width, 0.5)
                .forEach(row -> heights.add(row.position()));
        if (heights.stream().noneMatch(height -> Math.abs(height - aboutY) < SAME_LINE_MM)) {
            heights.add(aboutY);
        }
        return heights;
    }

    private void offer(
            Choice<Plate> choice,
            Edge outer,
            Edge inner,
            double heelY,
            DoubleUnaryOperator leftOfTop,
            Function<Plate, double[]> more) {
        for (Crossing top : tops(inner, heelY, leftOfTop)) {
            double topY = top.position();
            double height = heelY - topY;
            if (height < SHALLOWEST_MM) {
                continue;
            }
            List<Crossing> columns = crossLines.find(
                    Level.levelAt(topY), outer.xAt(heelY) - 1.5, inner.xAt(heelY) + 1.5, Level.UP,
                    x -> 0.15 * height, x -> 0.85 * height, 0.45);
            for (Crossing left : columns) {
                for (Crossing right : columns) {
                    Plate plate = new Plate(place.part, top, left, right, heelY);
                    if (plate.width() >= NARROWEST_MM) {
                        choice.offer(plate, DoubleStream.concat(
                                        Arrays.stream(traits(plate, columns, outer, inner)),
                                        Arrays.stream(more.apply(plate)))
                                .toArray());
                    }
                }
            }
        }
    }

    /** The level lines between the faces, below the plate's top, one of which is the wall's top. */
    private List<Crossing> tops(Edge inner, double heelY, DoubleUnaryOperator leftOfTop) {
        double reach = reach(expectation, place.part);
        double innerX = inner.xAt(heelY);
        return crossLines.find(
                Level.uprightAt(innerX),
                heelY - reach,
                heelY + 0.3,
                Level.RIGHT,
                y -> Math.min(-1.5, leftOfTop.applyAsDouble(y) - innerX),
                y -> -0.5,
                0.4);
    }

    /** How far below a plate's top, in millimetres, its underside is looked for. */
    static double reach(Expectation expectation, String part) {
        double deepest = expectation.hypotheses(part + ".depth").stream().mapToDouble(each -> each).max().orElse(0);
        return Math.max(Math.max(4, 2.3 * expectation.exactOr(part + ".depth", 3)), deepest) + 2;
    }

    /** Where the wall's top begins on the left, clear of its face and of the rafter. */
    double leftOfTop(Edge outer, double y) {
        return Math.max(outer.xAt(y) + 0.4, rafter.xAt(y) + 0.6);
    }

    private double[] traits(Plate plate, List<Crossing> columns, Edge outer, Edge inner) {
        double topY = plate.top.position();
        double left = plate.left.position();
        double right = plate.right.position();
        double outerX = outer.xAt(topY);
        double innerX = inner.xAt(topY);
        double outline = view.outlineInk();
        var crossed = pattern.crossed(
                new Point(left, topY), new Point(right, topY), new Point(left, plate.heelY), new Point(right, plate.heelY));
        return new double[] {
            Math.min(MOST_COST, expectation.cost(place.part + ".width", plate.width())),
            Math.min(MOST_COST, expectation.cost(place.part + ".depth", plate.depth())),
            Math.min(3, 2 * flush(left, right, outerX, innerX)),
            Math.min(2, Math.abs(left - rafter.xAt(plate.heelY)) / 1.2),
            plate.left.coverage(),
            Math.min(1, plate.left.ink() / outline),
            plate.right.coverage(),
            Math.min(1, plate.right.ink() / outline),
            plate.top.coverage(),
            Math.min(1, plate.top.ink() / outline),
            others(columns, plate, left, right, outerX, innerX),
            others(columns, plate, -Double.MAX_VALUE, left, outerX, innerX)
                    + others(columns, plate, right, Double.MAX_VALUE, outerX, innerX),
            crossed.orElse(0),
            crossed.isEmpty() ? 1 : 0,
            view.uprightInk(left, topY - 2, topY - 0.5),
            view.uprightInk(right, topY - 2, topY - 0.5),
            Math.abs(left - outerX) < ON_FACE_MM ? 1 : 0,
            Math.abs(right - innerX) < ON_FACE_MM ? 1 : 0,
            view.uprightInk(left, plate.heelY + 0.6, plate.heelY + 1.6),
            view.uprightInk(right, plate.heelY + 0.6, plate.heelY + 1.6)
        };
    }

    /** How many whole dark uprights between two places are neither the plate's sides nor the wall's faces. */
    private double others(List<Crossing> columns, Plate plate, double from, double to, double outerX, double innerX) {
        return columns.stream()
                .filter(column -> column != plate.left && column != plate.right)
                .filter(column -> column.position() > from && column.position() < to)
                .filter(column -> Math.abs(column.position() - outerX) >= ON_FACE_MM
                        && Math.abs(column.position() - innerX) >= ON_FACE_MM)
                .filter(column -> column.coverage() > 0.85 && column.ink() > 0.7 * view.outlineInk())
                .count();
    }

    /** How far the sides are, in millimetres, from where the task sets the plate: flush with a face, or in the middle. */
    private double flush(double left, double right, double outerX, double innerX) {
        double setIn = place.setInMm;
        double width = expectation.exactOr(place.part + ".width", 5);
        double thickness = expectation.exactOr(place.wall + ".thickness", 11);
        if (setIn < 0.3) {
            return Math.abs(left - outerX);
        }
        if (Math.abs(setIn + width - thickness) < 0.3) {
            return Math.abs(right - innerX);
        }
        return Math.abs((left + right) / 2 - (outerX + innerX) / 2) / 2;
    }
}
