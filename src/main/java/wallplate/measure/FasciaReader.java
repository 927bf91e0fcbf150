package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * Finds the two short level lines that close the fascia. They are little longer than they are broad, and stand among
 * the ends of the rafter, the covering and the first purlin.
 */
final class FasciaReader {

    /**
     * The closing lines.
     *
     * @param probability how likely they are the right ones
     * @param otherDepth the depth that the likeliest other two would give
     */
    record Closing(Edge bottom, Edge top, double probability, Optional<Double> otherDepth) {}

    private record Ends(Crossing bottom, Crossing top) implements Reading {

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of("fascia.depth", Optional.of(depth()));
        }

        double depth() {
            return top.position() - bottom.position();
        }

        boolean saysTheSameAs(Ends other) {
            return Math.abs(other.depth() - depth()) < SAME_MM;
        }
    }

    private static final List<String> TRAITS = List.of(
            "ink", "contrast", "tilted", "tilted-beyond", "sides-near", "sides-run-on", "sloping-on", "level-through");

    private static final Weights WEIGHTS = Weights.of("fascia", Stream.concat(
                    Stream.of("bottom", "top").flatMap(end -> TRAITS.stream().map(trait -> end + "." + trait)),
                    Stream.of("bottom-above-rafter", "top-above-covering", "depth"))
            .toList());

    private static final double SAME_MM = 0.4;
    private static final double LEAST_DEPTH_MM = 2;
    /** So far below the rafter a closing line is looked for, and further where both sides of the board run on. */
    private static final double REACH_MM = 13;

    private static final double FURTHEST_REACH_MM = 30;
    /** Sides that hang below the rafter may be broken by a label or a leader. */
    private static final double BROKEN_MM = 1;
    /** A side that ends is blank for longer than this; pencil on rough paper is not. */
    private static final double GAP_MM = 0.3;

    /** A side may overshoot the board's corner by this. */
    private static final double OVERSHOT_MM = 0.8;
    private static final double REACHED_WITHIN_MM = 2.5;
    private static final double LEAST_REACHED = 0.1;
    /** What runs on further than this is a construction line or another part's. */
    private static final double RUNS_ON_MM = 3;

    private static final double STEP_MM = 0.1;
    private static final double BESIDE_MM = 0.4;
    private static final double MOST_COST = 2;
    private static final double MOST_ABOVE_MM = 2;
    /** A learner's line may lie this far from the one it was meant to touch. */
    private static final double DRAWN_OFF_MM = 0.3;

    private static final int STEEPEST_TILT_DEGREES = 70;
    private static final int LEAST_TILT_DEGREES = 10;
    private static final int TILT_STEP_DEGREES = 5;
    private static final double MOST_TILTED = 0.6;

    private final EavesPlace place;

    FasciaReader(EavesPlace place) {
        this.place = place;
    }

    /** The lines that close the board between its face and the plumb cut behind it. */
    Optional<Closing> read(Edge face, Edge cut, double rafterLowY, double rafterHighY) {
        double faceX = face.middle().x();
        double cutX = cut.middle().x();
        Choice<Ends> choice = choice(face, cut, rafterLowY, rafterHighY);
        place.log().made(choice);
        return choice.best().map(best -> new Closing(
                closing(best.bottom, faceX, cutX),
                closing(best.top, faceX, cutX),
                choice.probability(best::saysTheSameAs),
                choice.bestWithout(best::saysTheSameAs).map(Ends::depth)));
    }

    /**
     * How much likelier two lines close a board between these uprights than none do, in log odds; empty where no two could.
     */
    OptionalDouble closingLead(Edge face, Edge cut, double rafterLowY, double rafterHighY) {
        return choice(face, cut, rafterLowY, rafterHighY).lead();
    }

    /** Every two lines that may close the board. */
    private Choice<Ends> choice(Edge face, Edge cut, double rafterLowY, double rafterHighY) {
        double faceX = face.middle().x();
        double cutX = cut.middle().x();
        double width = cutX - faceX;
        // Its top hides the rafter's end; its bottom may close above the rafter's underside where a slip made it too short.
        double lowestTop = 0.35 * rafterLowY + 0.65 * rafterHighY;
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), rafterLowY - reach(face, cut, rafterLowY), place.coveringY(cutX) + 1, Level.RIGHT,
                y -> 0.2 * width, y -> 0.8 * width, 0.6);
        List<Crossing> bottoms = rows.stream().filter(row -> isReached(face, cut, row, -1)).toList();
        List<double[]> bottomTraits = bottoms.stream().map(row -> traits(face, cut, row, -1)).toList();
        Choice<Ends> choice = new Choice<>(WEIGHTS);
        for (Crossing top : rows) {
            if (top.position() < lowestTop || !isReached(face, cut, top, 1)) {
                continue;
            }
            double[] topTraits = traits(face, cut, top, 1);
            for (int index = 0; index < bottoms.size(); index++) {
                Ends reading = new Ends(bottoms.get(index), top);
                if (reading.depth() >= LEAST_DEPTH_MM) {
                    double[] both = traitsOfBoth(reading, faceX, rafterLowY);
                    choice.offer(reading, Stream.of(bottomTraits.get(index), topTraits, both)
                            .flatMapToDouble(DoubleStream::of)
                            .toArray());
                }
            }
        }
        return choice;
    }

    /**
     * Whether a side of the board is seen shortly before a level line. Lead breaks for as long as this on one side, hardly
     * on both at one height; a dimension line further down is reached by neither.
     */
    private boolean isReached(Edge face, Edge cut, Crossing row, int away) {
        double y = row.position();
        double from = y - REACHED_WITHIN_MM * away;
        return Stream.of(face, cut).anyMatch(side -> sideInk(side, from, y - OVERSHOT_MM / 2 * away) > LEAST_REACHED);
    }

    /** How far below the rafter to look: a board that was drawn too deep hangs as far down as its two sides. */
    private double reach(Edge face, Edge cut, double rafterLowY) {
        double ofFace = runsOn(face, rafterLowY, -1, FURTHEST_REACH_MM, BROKEN_MM);
        double ofCut = runsOn(cut, rafterLowY, -1, FURTHEST_REACH_MM, BROKEN_MM);
        return Math.max(REACH_MM, Math.min(ofFace, ofCut) + BROKEN_MM);
    }

    /** Half-way between what the ink between the sides says and what the line's own ink, its overrun included, says: each has its own errors. */
    private Edge closing(Crossing row, double faceX, double cutX) {
        Edge between = place.view().fit().fit(Level.levelAt(row.position()), faceX + 0.1, cutX - 0.1, 0.08, 0.2);
        OptionalDouble own = new ShortLevel(place.view().ink(), place.view().outlineInk()).height(row.position(), faceX, cutX);
        return own.isPresent() ? between.offsetBy((own.getAsDouble() - between.middle().y()) / 2) : between;
    }

    /** What speaks for or against a level line as an end of the board: its sides reach it and end there, and it is level. */
    private double[] traits(Edge face, Edge cut, Crossing row, int away) {
        double y = row.position();
        double faceX = face.xAt(y);
        double cutX = cut.xAt(y);
        double middleX = (faceX + cutX) / 2;
        double outline = place.view().outlineInk();
        double own = stripInk(faceX, cutX, y, 0, -0.25);
        double beside = Math.max(
                stripInk(faceX, cutX, y + BESIDE_MM, 0, -0.25), stripInk(faceX, cutX, y - BESIDE_MM, 0, -0.25));
        double upToIt = y - 0.2 * away;
        return new double[] {
            Math.min(1, row.ink() / outline),
            Math.min(1, Math.max(0, (own - beside) / outline)),
            tilted(faceX, cutX, y, 0.1),
            tilted(faceX, cutX, y, 0.3),
            Math.min(sideInk(face, y - 1.1 * away, upToIt), sideInk(cut, y - 1.1 * away, upToIt)),
            Math.min(overrun(face, y, away), overrun(cut, y, away)),
            Math.max(
                    place.slopingInk(faceX - 1.8, faceX - 0.6, middleX, y),
                    place.slopingInk(cutX + 0.6, cutX + 1.8, middleX, y)),
            Math.min(
                    place.view().levelInk(y, faceX - 2, faceX - 0.7),
                    place.view().levelInk(y, cutX + 0.7, cutX + 2))
        };
    }

    /** What speaks for or against two lines together: the board hides the rafter's end, and its top is against the covering's underside. */
    private double[] traitsOfBoth(Ends ends, double faceX, double rafterLowY) {
        double aboveCovering = place.roof().coveringBottom()
                .map(underside -> ends.top.position() - underside.yAt(faceX) - DRAWN_OFF_MM)
                .orElse(0.0);
        return new double[] {
            Math.max(0, Math.min(MOST_ABOVE_MM, ends.bottom.position() - rafterLowY)) / MOST_ABOVE_MM,
            Math.max(0, Math.min(MOST_ABOVE_MM, aboveCovering)),
            Math.min(MOST_COST, place.expectation().cost("fascia.depth", ends.depth()))
        };
    }

    private double sideInk(Edge side, double fromY, double toY) {
        return place.view().uprightInk(side.xAt((fromY + toY) / 2), fromY, toY);
    }

    /** How far a side runs on beyond a line by more than an overshot corner, as a share of the most that is looked at. */
    private double overrun(Edge side, double y, int away) {
        double beyond = runsOn(side, y, away, RUNS_ON_MM, GAP_MM) - OVERSHOT_MM;
        return Math.max(0, beyond) / (RUNS_ON_MM - OVERSHOT_MM);
    }

    /** How far a side's ink goes from a height, upwards or downwards, until it is blank for longer than a gap. */
    private double runsOn(Edge side, double fromY, int away, double mostMm, double gapMm) {
        double end = 0;
        for (double far = STEP_MM / 2; far < mostMm && far - end <= gapMm; far += STEP_MM) {
            double y = fromY + away * far;
            if (place.view().uprightInk(side.xAt(y), y - STEP_MM, y + STEP_MM) > 0.5) {
                end = far;
            }
        }
        return end;
    }

    /**
     * How much more ink lies along the likeliest line that is not level than along the level one, both through the board's
     * middle: an edge of the covering, a diagonal of a purlin's box or a leader crosses the board at a slope.
     *
     * @param beyond how far beyond the board's sides to look, as a share of its width
     */
    private double tilted(double faceX, double cutX, double y, double beyond) {
        double most = 0;
        for (int tilt = LEAST_TILT_DEGREES; tilt <= STEEPEST_TILT_DEGREES; tilt += TILT_STEP_DEGREES) {
            double rise = Math.tan(Math.toRadians(tilt));
            most = Math.max(most, stripInk(faceX, cutX, y, rise, beyond));
            most = Math.max(most, stripInk(faceX, cutX, y, -rise, beyond));
        }
        double more = (most - stripInk(faceX, cutX, y, 0, beyond)) / place.view().outlineInk();
        return Math.max(-MOST_TILTED, Math.min(MOST_TILTED, more));
    }

    /**
     * The mean ink across the board, along a line of a rise to the right through its middle.
     *
     * @param beyond how far beyond its sides to read, as a share of its width; below 0 to stay so far within them
     */
    private double stripInk(double fromX, double toX, double y, double rise, double beyond) {
        double width = toX - fromX;
        int samples = 20;
        double sum = 0;
        for (int sample = 0; sample < samples; sample++) {
            double part = -beyond + (1 + 2 * beyond) * (sample + 0.5) / samples;
            sum += place.view().ink().at(fromX + part * width, y + (part - 0.5) * width * rise);
        }
        return sum / samples;
    }
}
