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
            "coverage", "ink", "contrast", "tilted", "sides-whole", "sides-near", "side-near", "beyond-both", "beyond-one",
            "sloping-through", "level-through", "level-beyond");

    private static final Weights WEIGHTS = Weights.of("fascia", Stream.concat(
                    Stream.of("bottom", "top").flatMap(end -> TRAITS.stream().map(trait -> end + "." + trait)),
                    Stream.of("depth"))
            .toList());

    private static final double SAME_MM = 0.4;
    private static final double LEAST_DEPTH_MM = 2;
    /** How far below the rafter a fascia may hang. */
    private static final double REACH_MM = 13;

    private static final double BESIDE_MM = 0.4;
    private static final double MOST_COST = 3;
    private static final double[] TILTS_DEGREES = {-60, -45, -30, 30, 45, 60};

    private final EavesPlace place;

    FasciaReader(EavesPlace place) {
        this.place = place;
    }

    /** The lines that close the board between its face and the plumb cut behind it. */
    Optional<Closing> read(Edge face, Edge cut, double rafterLowY, double rafterHighY) {
        double faceX = face.middle().x();
        double cutX = cut.middle().x();
        double width = cutX - faceX;
        double middle = 0.35 * rafterLowY + 0.65 * rafterHighY;
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), rafterLowY - REACH_MM, place.coveringY(cutX) + 1, Level.RIGHT,
                y -> 0.2 * width, y -> 0.8 * width, 0.6);
        Choice<Ends> choice = new Choice<>(WEIGHTS);
        List<Crossing> tops = rows.stream().filter(row -> row.position() >= middle).toList();
        List<double[]> topTraits = tops.stream().map(row -> traits(face, cut, row, middle, 1)).toList();
        for (Crossing bottom : rows) {
            if (bottom.position() > middle) {
                continue;
            }
            double[] bottomTraits = traits(face, cut, bottom, middle, -1);
            for (int index = 0; index < tops.size(); index++) {
                Ends reading = new Ends(bottom, tops.get(index));
                if (reading.depth() >= LEAST_DEPTH_MM) {
                    double cost = Math.min(MOST_COST, place.expectation().cost("fascia.depth", reading.depth()));
                    choice.offer(reading, Stream.of(bottomTraits, topTraits.get(index), new double[] {cost})
                            .flatMapToDouble(DoubleStream::of)
                            .toArray());
                }
            }
        }
        place.log().made(choice);
        return choice.best().map(best -> new Closing(
                closing(best.bottom, faceX, cutX),
                closing(best.top, faceX, cutX),
                choice.probability(best::saysTheSameAs),
                choice.bestWithout(best::saysTheSameAs).map(Ends::depth)));
    }

    /** Half-way between what the ink between the sides says and what the line's own ink, its overrun included, says: each has its own errors. */
    private Edge closing(Crossing row, double faceX, double cutX) {
        Edge between = place.view().fit().fit(Level.levelAt(row.position()), faceX + 0.1, cutX - 0.1, 0.08, 0.2);
        OptionalDouble own = new ShortLevel(place.view().ink(), place.view().outlineInk()).height(row.position(), faceX, cutX);
        return own.isPresent() ? between.offsetBy((own.getAsDouble() - between.middle().y()) / 2) : between;
    }

    /** What speaks for or against a level line as an end of the board: its sides reach it and end there. */
    private double[] traits(Edge face, Edge cut, Crossing row, double middle, int away) {
        double y = row.position();
        double faceX = face.xAt(y);
        double cutX = cut.xAt(y);
        double outline = place.view().outlineInk();
        double own = stripInk(faceX, cutX, y, 0);
        double beside = Math.max(stripInk(faceX, cutX, y + BESIDE_MM, 0), stripInk(faceX, cutX, y - BESIDE_MM, 0));
        double tilted = DoubleStream.of(TILTS_DEGREES)
                .map(tilt -> stripInk(faceX, cutX, y, Math.tan(Math.toRadians(tilt))))
                .max()
                .orElseThrow();
        double upToIt = y - 0.2 * away;
        double nearFace = sideInk(face, y - 1.1 * away, upToIt);
        double nearCut = sideInk(cut, y - 1.1 * away, upToIt);
        double beyondFace = sideInk(face, y + 0.6 * away, y + 1.6 * away);
        double beyondCut = sideInk(cut, y + 0.6 * away, y + 1.6 * away);
        double levelOutside = place.view().levelInk(y, faceX - 2, faceX - 0.7);
        double levelInside = place.view().levelInk(y, cutX + 0.7, cutX + 2);
        return new double[] {
            row.coverage(),
            Math.min(1, row.ink() / outline),
            Math.min(1, Math.max(0, (own - beside) / outline)),
            Math.min(1, Math.max(0, (tilted - own) / outline)),
            Math.min(sideInk(face, middle, upToIt), sideInk(cut, middle, upToIt)),
            Math.min(nearFace, nearCut),
            Math.max(nearFace, nearCut),
            Math.min(beyondFace, beyondCut),
            Math.max(beyondFace, beyondCut),
            Math.min(
                    place.slopingInk(faceX - 2.2, faceX - 0.9, faceX, y),
                    place.slopingInk(cutX + 0.9, cutX + 2.2, cutX, y)),
            Math.min(levelOutside, levelInside),
            Math.max(levelOutside, levelInside)
        };
    }

    private double sideInk(Edge side, double fromY, double toY) {
        if (Math.abs(toY - fromY) < 0.4) {
            return 1;
        }
        return place.view().uprightInk(side.xAt((fromY + toY) / 2), fromY, toY);
    }

    /** The mean ink across the middle half of the board, along a line of a rise to the right through its middle. */
    private double stripInk(double fromX, double toX, double y, double rise) {
        double width = toX - fromX;
        int samples = 12;
        double sum = 0;
        for (int sample = 0; sample < samples; sample++) {
            double part = 0.25 + 0.5 * (sample + 0.5) / samples;
            sum += place.view().ink().at(fromX + part * width, y + (part - 0.5) * width * rise);
        }
        return sum / samples;
    }
}
