package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds what hangs at the rafter's outer end: the plumb cut, fascia, gutter, barge board, and the covering's end. */
final class EavesReader {

    /** The edges at the eaves; what is not there is empty. */
    record Eaves(
            Optional<Edge> cut,
            Optional<Edge> fasciaOuter,
            Optional<FasciaReader.Closing> fasciaClosing,
            Optional<GutterReader.Gutter> gutter,
            Optional<Edge> bargeEnd,
            Optional<Edge> bargeBottom,
            Optional<CoveringEnd> coveringEnd,
            Doubts doubts) {

        Optional<Edge> gutterOuter() {
            return gutter.map(GutterReader.Gutter::outer);
        }

        Optional<Edge> gutterBottom() {
            return gutter.map(GutterReader.Gutter::bottom);
        }
    }

    /**
     * What could be read in another way nearly as well.
     *
     * @param isPlaceOpen whether the rafter could end somewhere else altogether
     * @param isCutOpen whether another upright could be the plumb cut
     * @param isFaceOpen whether another upright, or none, could be the fascia's face
     * @param gutter why the gutter is in question
     */
    record Doubts(boolean isPlaceOpen, boolean isCutOpen, boolean isFaceOpen, Optional<String> gutter) {}

    /** Ends so near to one another are looked at in one go. */
    private static final double SAME_PLACE_MM = 4;
    /** A face of which less of the rafter's depth is seen was found above the rafter. */
    private static final double LEAST_BESIDE_RAFTER = 0.3;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final WallReader.Wall wall;
    private final ChoiceLog log;

    EavesReader(DrawingView view, Expectation expectation, RoofLines roof, WallReader.Wall wall, ChoiceLog log) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.wall = wall;
        this.log = log;
    }

    Eaves read() {
        if (roof.rafterTop().isEmpty() || roof.rafterBottom().isEmpty()) {
            return nothing();
        }
        Edge top = roof.rafterTop().get();
        Edge bottom = roof.rafterBottom().get();
        CrossLines crossLines = view.crossLines();
        EavesPlace place = new EavesPlace(view, expectation, roof, wall, crossLines, top, bottom, log);
        BargeBoardReader bargeBoard = new BargeBoardReader(place);
        Optional<StandReader.Stand> stand = new StandReader(place).read(
                ends(top, bottom),
                endX -> expectation.asksPart("barge-board") ? bargeBoard.end(endX, Optional.empty()) : Optional.empty());
        return stand.map(found -> around(place, bargeBoard, found)).orElseGet(EavesReader::nothing);
    }

    /**
     * About where the rafter may end: where its lines do, or, as a construction line may carry those on, as far outside the
     * wall as the overhang is or a slip makes it.
     */
    private List<Double> ends(Edge top, Edge bottom) {
        List<Double> ends = new ArrayList<>();
        ends.add(Math.max(top.segment().start().x(), bottom.segment().start().x()));
        wall.outer().ifPresent(outer -> expectation.hypotheses("rafter.overhang").stream()
                .map(overhang -> outer.middle().x() - overhang)
                .filter(x -> ends.stream().allMatch(other -> Math.abs(other - x) > SAME_PLACE_MM))
                .forEach(ends::add));
        return ends;
    }

    /** What hangs around a plumb cut and a fascia's face. */
    private Eaves around(EavesPlace place, BargeBoardReader bargeBoard, StandReader.Stand stand) {
        double lowY = place.rafterBottom().yAt(stand.cut().position());
        double highY = place.rafterTop().yAt(stand.cut().position());
        double closest = stand.face().map(face -> stand.cut().position() - face.position()).orElse(2.0);
        Edge cut = place.upright(stand.cut(), lowY, highY, closest);
        Optional<Edge> face = stand.face().map(found -> face(place, found, lowY, highY, closest));
        double faceX = face.orElse(cut).xAt((lowY + highY) / 2);
        Optional<Edge> bargeEnd = bargeBoard.end(faceX - 0.45, Optional.empty());
        Optional<Edge> bargeBottom = bargeEnd.flatMap(end -> bargeBoard.bottom(end, faceX));
        // What closes on the face with a level line alone is the gutter's to explain; the barge board may not claim its ink.
        Optional<Edge> bargeAlone = bargeEnd.filter(end -> !bargeBoard.isClosedByALevel(end, faceX, cut.xAt(lowY)));
        boolean isVacant = GutterReader.isVacant(
                place, faceX, lowY, highY, bargeAlone, bargeAlone.isPresent() ? bargeBottom : Optional.empty());
        GutterReader.Found gutter =
                new GutterReader(place, faceX, bargeAlone).read(lowY, highY, face.orElse(cut), isVacant);
        Optional<Edge> gutterOuter = gutter.gutter().map(GutterReader.Gutter::outer);
        if (bargeEnd.isPresent() && EavesPlace.standsAt(gutterOuter, bargeEnd.get().middle().x(), lowY, 0.4)) {
            bargeEnd = bargeBoard.end(faceX - 0.45, gutterOuter);
            bargeBottom = bargeEnd.flatMap(end -> bargeBoard.bottom(end, faceX));
        }
        Optional<FasciaReader.Closing> closing = face.flatMap(outer -> new FasciaReader(place).read(outer, cut, lowY, highY));
        Optional<InnerSide> overdrawn = face.flatMap(outer -> gutter.gutter().flatMap(hung -> InnerSide.of(
                view,
                outer,
                closing.map(EavesReader::fromTo).orElse(new InnerSide.Heights(lowY, highY)),
                new InnerSide.Heights(hung.bottom().middle().y(), hung.rim().y()))));
        Optional<CoveringEnd> coveringEnd = CoveringEnd.read(place, cut);
        return new Eaves(
                Optional.of(cut),
                overdrawn.map(InnerSide::face).or(() -> face),
                closing,
                gutter.gutter()
                        .map(hung -> overdrawn.map(InnerSide::inner).map(hung::withInner).orElse(hung))
                        .map(hung -> coveringEnd.map(CoveringEnd::edge).map(hung::beside).orElse(hung)),
                bargeEnd,
                bargeBottom,
                coveringEnd,
                new Doubts(
                        stand.placeProbability() < Choice.SURE,
                        stand.cutProbability() < Choice.SURE, stand.probability() < Choice.SURE, gutter.doubt()));
    }

    private static InnerSide.Heights fromTo(FasciaReader.Closing closing) {
        return new InnerSide.Heights(closing.bottom().middle().y(), closing.top().middle().y());
    }

    private static Eaves nothing() {
        return new Eaves(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), new Doubts(false, false, false, Optional.empty()));
    }

    /** The fascia's face beside the rafter or, where the board was drawn too short to hide it, above the rafter. */
    private Edge face(EavesPlace place, Crossing column, double lowY, double highY, double closestMm) {
        double x = column.position();
        double underCoveringY = roof.coveringBottom().map(edge -> edge.yAt(x)).orElse(highY);
        double besideRafter = view.uprightInk(x, lowY, highY);
        boolean isAboveRafter = besideRafter < LEAST_BESIDE_RAFTER && besideRafter < view.uprightInk(x, highY, underCoveringY);
        return isAboveRafter
                ? place.upright(column, highY, underCoveringY, closestMm)
                : place.upright(column, lowY, highY, closestMm);
    }
}
