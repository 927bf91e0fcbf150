package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/** Finds the wall's two faces among the uprights near the heel. */
final class WallFaces {

    /**
     * The faces.
     *
     * @param probability how likely they, or others as far apart, are the right ones
     */
    record Found(Run outer, Run inner, double probability) {}

    private record Faces(Run outer, Run inner) implements Reading {

        double thickness() {
            return inner.segment().midpoint().x() - outer.segment().midpoint().x();
        }

        boolean saysTheSameAs(Faces other) {
            return Math.abs(other.thickness() - thickness()) < SAME_MM;
        }

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of("wall.thickness", Optional.of(thickness()));
        }
    }

    private static final Weights WEIGHTS = Weights.of("wall", List.of(
            "thickness", "foot-apart", "heel-off", "short", "cut-off", "ceiling-apart", "outer-ink", "inner-ink", "filled",
            "hatched", "upright-between"));

    private static final double SAME_MM = 0.5;
    private static final double THINNEST_MM = 3;
    private static final double WIDEST_MM = 40;
    private static final double SHORTEST_MM = 6;
    private static final double MOST_COST = 5;
    private static final double LONGEST_HATCH_MM = 5;
    private static final double HATCH_STEP_MM = 0.2;
    private static final double HATCH_COVERAGE = 0.75;
    /** Lines a third of a millimetre broad that stand 6 mm apart along the upright take up so much of it. */
    private static final double HATCH_SHARE = 0.06;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final ChoiceLog log;

    WallFaces(DrawingView view, Expectation expectation, RoofLines roof, ChoiceLog log) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.log = log;
    }

    /**
     * Where the outer upper corner of the plate is looked for.
     *
     * @param rafter the rafter's underside, on which it lies
     * @param isLevelKnown whether a long level line tells its height, and with it the place; otherwise the wall may stand
     *     anywhere under the rafter's lower half
     */
    record Heel(double x, double y, Edge rafter, boolean isLevelKnown) {

        /** Its height if the wall's outer face stands at a place. */
        double heightFor(double outerX, double setIn) {
            return isLevelKnown ? y : rafter.yAt(outerX + setIn);
        }

        boolean mayHaveFaceAt(double faceX, double reach) {
            double middleX = rafter.segment().midpoint().x();
            return Math.abs(faceX - x) < reach || (!isLevelKnown && faceX < middleX);
        }
    }

    /** The faces of a wall whose plate has its outer upper corner about at a place. */
    Optional<Found> read(Heel heel) {
        double thickest = expectation.hypotheses("wall.thickness").stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(WIDEST_MM);
        double reach = 2 * thickest + 6;
        double furthestBelow = 2 * expectation.exactOr("wall-plate.depth", 4) + 10;
        List<Run> candidates = view.upright().stream()
                .filter(run -> run.length() >= SHORTEST_MM && heel.mayHaveFaceAt(run.segment().midpoint().x(), reach))
                .filter(run -> {
                    double asOuter = heel.heightFor(run.segment().midpoint().x(), expectation.setIn());
                    double asInner = heel.heightFor(run.segment().midpoint().x() - thickest, expectation.setIn());
                    return run.lowY() < asOuter - SHORTEST_MM
                            && run.highY() > Math.min(asOuter, asInner) - furthestBelow
                            && run.segment().midpoint().y() < asOuter + 6;
                })
                .toList();
        Choice<Faces> choice = new Choice<>(WEIGHTS);
        for (Run outer : candidates) {
            for (Run inner : candidates) {
                Faces faces = new Faces(outer, inner);
                if (faces.thickness() >= THINNEST_MM && faces.thickness() <= Math.max(WIDEST_MM, 1.15 * thickest)) {
                    choice.offer(faces, traits(faces, candidates, heel));
                }
            }
        }
        log.made(choice);
        return choice.best()
                .map(best -> new Found(best.outer, best.inner, choice.probability(best::saysTheSameAs)));
    }

    private double[] traits(Faces faces, List<Run> candidates, Heel heel) {
        double outerX = faces.outer.segment().midpoint().x();
        double heelY = heel.heightFor(outerX, expectation.setIn());
        double innerX = faces.inner.segment().midpoint().x();
        double footY = (faces.outer.lowY() + faces.inner.lowY()) / 2;
        long between = candidates.stream()
                .mapToDouble(run -> run.segment().midpoint().x())
                .filter(x -> x > outerX + 0.6 && x < innerX - 0.6)
                .count();
        return new double[] {
            Math.min(MOST_COST, expectation.cost("wall.thickness", faces.thickness())),
            Math.min(4, Math.abs(faces.outer.lowY() - faces.inner.lowY()) / 2),
            Math.min(3, Math.abs(heel.x - expectation.setIn() - outerX) / 3),
            Math.min(3, Math.max(0, 12 / Math.min(faces.outer.length(), faces.inner.length()) - 0.5)),
            cutOff(outerX, innerX, footY),
            roof.ceilingTop()
                    .map(ceiling -> Math.min(3, Math.abs(ceiling.segment().start().x() - innerX) / 2))
                    .orElse(0.0),
            Math.min(1.2, faces.outer.ink() / view.outlineInk()),
            Math.min(1.2, faces.inner.ink() / view.outlineInk()),
            filled(outerX, innerX, footY, heelY),
            hatched(outerX, innerX, footY, heelY),
            Math.min(3, between)
        };
    }

    /** The share of ink on the best level line that joins two faces at their lower ends, where a wall is cut off. */
    private double cutOff(double outerX, double innerX, double footY) {
        double best = 0;
        for (double y = footY - 2; y <= footY + 2.5; y += 0.2) {
            best = Math.max(best, view.fit().coverage(Level.levelAt(y), outerX + 0.3, innerX - 0.3, 0.35));
        }
        return best;
    }

    /** The share of the wall's section that is inked, as a hatched one is; 0.3 at most. */
    private double filled(double outerX, double innerX, double footY, double heelY) {
        int inked = 0;
        int counted = 0;
        for (double x = outerX + 0.7; x < innerX - 0.7; x += 0.3) {
            for (double y = footY + 0.7; y < heelY - 4; y += 0.3) {
                counted++;
                inked += view.ink().at(x, y) > 0.35 * view.outlineInk() ? 1 : 0;
            }
        }
        return counted == 0 ? 0 : Math.min(0.3, inked / (double) counted);
    }

    /** How much of the section shows lines at 45 degrees in its middle, 1 where as many as hatching has. */
    private double hatched(double outerX, double innerX, double footY, double heelY) {
        double half = Math.min(LONGEST_HATCH_MM, (innerX - outerX - 1) / Math.cos(Math.toRadians(45))) / 2;
        double middleX = (outerX + innerX) / 2;
        double best = 0;
        for (double direction : HatchLines.DIRECTIONS_DEGREES) {
            int inked = 0;
            int counted = 0;
            for (double y = footY + 1; y < heelY - 4; y += HATCH_STEP_MM) {
                counted++;
                Line line = Line.at(new Point(middleX, y), direction);
                inked += view.fit().coverage(line, -half, half, DrawingView.OUTLINE_PART) > HATCH_COVERAGE ? 1 : 0;
            }
            best = Math.max(best, counted == 0 ? 0 : inked / (double) counted);
        }
        return Math.min(1, best / HATCH_SHARE);
    }
}
