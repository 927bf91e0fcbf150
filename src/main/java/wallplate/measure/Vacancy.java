package wallplate.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * Whether the place of a part that was not found is vacant: only there may the part be called absent. Lines in the
 * part's own directions that belong to no other part say that it may have been drawn and not been understood.
 */
final class Vacancy {

    /** How near a line must lie to that of a known part to belong to it. */
    private static final double SAME_LINE_MM = 0.5;
    /** A leader or two that cross a row leave less ink than this in it; one box with its diagonals leaves more. */
    private static final double CLEAN_ROW_SHARE = 0.012;
    /** A piece of an upright this long, against the room between beam and rafter, may be a post's side. */
    private static final double POST_SHARE = 0.5;
    /** The share of the room between wall and break line over which a line must be dark to be one of beam or ceiling. */
    private static final double LONG_ROW_SHARE = 0.45;
    /** No upright of a word is longer. */
    private static final double LONGEST_LETTER_MM = 3.5;
    /** A line at least so far from every known one is one of its own. */
    private static final double BESIDE_KNOWN_MM = 0.7;
    /** A leader's tip may lie so far beside the line that it points at. */
    private static final double ARROW_MM = 1;

    /** A dark piece this long, against the asked depth, may be the end of a barge board. */
    private static final double BARGE_END_SHARE = 0.5;
    /** From its corners edges slope inwards, of which about so much is seen even where the lead broke. */
    private static final double SLOPES_ON_SHARE = 0.5;

    private static final double SLOPE_BESIDE_MM = 1.6;
    private static final double[] SLOPES_ON_MM = {0.4, 4.4};

    /** Ink so near to the middle of a row's own lines may be theirs. */
    private static final double OWN_INK_MM = 0.5;
    /** A row is looked at between these parts of its height, where they are clear of its own lines. */
    private static final double LOWEST_PART = 0.3;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final WallReader.Wall wall;
    private final EavesReader.Eaves eaves;
    private final CrossLines crossLines;

    Vacancy(DrawingView view, Expectation expectation, RoofLines roof, WallReader.Wall wall, EavesReader.Eaves eaves) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.wall = wall;
        this.eaves = eaves;
        this.crossLines = view.crossLines();
    }

    /** Why a part is neither called absent nor measured. */
    static String holdsInk(String what) {
        return "there is ink where " + what + " should be, but no clear one";
    }

    /** Whether no long dark upright stands where the barge board ends, outside the face. */
    boolean ofBargeBoard(double faceX) {
        if (roof.coveringTop().isEmpty()) {
            return false;
        }
        Edge covering = roof.coveringTop().get();
        double depth = expectation.exactOr("barge-board.depth", 14);
        return view.upright().stream().noneMatch(run -> isBargeEnd(run, faceX, covering, depth)) && !hasSlopingEdgeOutside(faceX);
    }

    private boolean isBargeEnd(Run run, double faceX, Edge covering, double depth) {
        double x = run.segment().midpoint().x();
        double topY = run.highY();
        boolean isOutside = x < faceX - SAME_LINE_MM && x > faceX - 3 * depth;
        boolean isOfItsSize = run.length() > Math.min(LONGEST_LETTER_MM, BARGE_END_SHARE * depth) && run.length() < 2.5 * depth;
        boolean isInItsPlace = Math.abs(topY - covering.yAt(x)) < depth / 2;
        boolean isAnothers = isKnownUpright(x, run.segment().midpoint().y()) || pointsAtGutter(x, topY);
        return isOutside && isOfItsSize && isInItsPlace && !isAnothers && slopesOn(run);
    }

    /** Whether an upright ends at the gutter's bottom from below, as a leader does. */
    private boolean pointsAtGutter(double x, double topY) {
        return eaves.gutterBottom()
                .filter(bottom -> bottom.segment().start().x() - SAME_LINE_MM < x && x < bottom.segment().end().x() + SAME_LINE_MM)
                .filter(bottom -> Math.abs(bottom.yAt(x) - topY) < ARROW_MM)
                .isPresent();
    }

    /** Whether from somewhere on an upright, which may run on beyond the board's corners, a line slopes inwards. */
    private boolean slopesOn(Run run) {
        double x = run.segment().midpoint().x();
        return !crossLines
                .find(Level.uprightAt(x), run.lowY() - SLOPE_BESIDE_MM, run.highY() + SLOPE_BESIDE_MM, view.slope(),
                        y -> SLOPES_ON_MM[0], y -> SLOPES_ON_MM[1], SLOPES_ON_SHARE)
                .isEmpty();
    }

    /** Whether a line that is none of the rafter's or the covering's runs with the slope from outside the face. */
    private boolean hasSlopingEdgeOutside(double faceX) {
        if (roof.rafterBottom().isEmpty()) {
            return false;
        }
        Line rafter = roof.rafterBottom().get().line();
        double least = Math.max(5, 0.5 * expectation.exactOr("rafter.overhang", 10));
        double wallX = wall.outer().map(edge -> edge.middle().x()).orElse(faceX + 30);
        return view.sloping().stream()
                .filter(run -> run.length() > least && run.segment().start().x() < faceX)
                .map(run -> run.segment().midpoint())
                .anyMatch(middle -> middle.x() < wallX && rafter.distanceTo(middle) > -15 && isBelowCoveringAndUnknown(middle));
    }

    private boolean isBelowCoveringAndUnknown(Point place) {
        boolean isBelow = roof.coveringBottom().or(roof::rafterTop)
                .map(edge -> edge.line().distanceTo(place) < -BESIDE_KNOWN_MM)
                .orElse(false);
        return isBelow && Stream.of(roof.rafterBottom(), roof.rafterTop(), roof.coveringBottom())
                .flatMap(Optional::stream)
                .allMatch(edge -> Math.abs(edge.line().distanceTo(place)) > BESIDE_KNOWN_MM);
    }

    /** Whether no upright stands between the tie beam, or where none is drawn the plate's height, and the rafter. */
    boolean ofPosts() {
        if (roof.rafterBottom().isEmpty()) {
            return false;
        }
        if (roof.tieBeamTop().isEmpty() && (roof.tieBeamBottom().isPresent() || wall.plateTop().isEmpty())) {
            return false;
        }
        Edge beam = roof.tieBeamTop().or(wall::plateTop).orElseThrow();
        Edge rafter = roof.rafterBottom().get();
        double heelX = Level.crossing(beam, rafter).x();
        double endX = roof.breakLine().map(edge -> edge.xAt(beam.middle().y())).orElse(beam.segment().end().x()) - 1.2;
        return view.upright().stream().noneMatch(run -> {
            double x = run.segment().midpoint().x();
            double low = Math.max(beam.yAt(x), run.lowY());
            double high = Math.min(rafter.yAt(x), run.highY());
            double room = rafter.yAt(x) - beam.yAt(x);
            return x > heelX + 2 && x < endX && high - low > Math.max(2.5, POST_SHARE * room) && !isOfWall(x, low);
        });
    }

    private boolean isKnownUpright(double x, double y) {
        return EavesPlace.standsAt(eaves.gutterOuter(), x, y, SAME_LINE_MM)
                || EavesPlace.standsAt(eaves.bargeEnd(), x, y, SAME_LINE_MM)
                || isOfWall(x, y);
    }

    /** Whether an upright is a face of the wall, drawn or constructed on past the plate. */
    private boolean isOfWall(double x, double y) {
        return EavesPlace.standsAt(wall.outer(), x, y, SAME_LINE_MM) || EavesPlace.standsAt(wall.inner(), x, y, SAME_LINE_MM);
    }

    /** Whether the band between two lines holds no more ink than a leader or two that cross it. */
    boolean ofRow(Edge lower, Edge upper, double from, double to) {
        double height = lower.distanceTo(upper, lower.line().direction());
        double lowest = Math.min(0.5, Math.max(LOWEST_PART, OWN_INK_MM / height));
        int inked = 0;
        int counted = 0;
        for (double position = from; position < to; position += 0.15) {
            for (double part = lowest; part <= 1.01 - lowest; part += 0.1) {
                Point point = lower.line().pointAt(position)
                        .plus(lower.line().direction().leftNormal().times(part * height));
                counted++;
                inked += view.ink().at(point.x(), point.y()) > 0.4 * view.outlineInk() ? 1 : 0;
            }
        }
        return counted == 0 || inked / (double) counted < CLEAN_ROW_SHARE;
    }

    /** Whether no other long level line lies above the tie beam's top: then that would be the top. */
    boolean aboveBeam(Edge beamTop) {
        return longRows(beamTop, SAME_LINE_MM + 0.2, 2 * expectation.exactOr("tie-beam.depth", 7)).isEmpty();
    }

    /** Whether no other long level line lies below the tie beam's underside, where a ceiling's would. */
    boolean belowBeam(Edge beamBottom) {
        double drop = expectation.exactOr("ceiling.drop", 2.5);
        return longRows(beamBottom, -3 * drop - 2, -SAME_LINE_MM).isEmpty();
    }

    /** The level lines between two heights above a known one that run over most of the room inside the wall. */
    private List<Crossing> longRows(Edge level, double fromMm, double toMm) {
        double y = level.middle().y();
        double fromX = wall.inner().map(edge -> edge.xAt(y)).orElse(level.segment().start().x() + 10);
        double toX = roof.breakLine().map(edge -> edge.xAt(y)).orElse(level.segment().end().x());
        return crossLines
                .find(Level.uprightAt(0), y + fromMm, y + toMm, Level.RIGHT, at -> insideOfRafter(at, fromX), at -> toX - 1.5, LONG_ROW_SHARE)
                .stream()
                .filter(row -> toX - insideOfRafter(row.position(), fromX) > 12)
                .toList();
    }

    /** Where at a height the room under the rafter begins, clear of the wall. */
    private double insideOfRafter(double y, double wallX) {
        double rafterX = roof.rafterBottom().map(edge -> edge.xAt(y)).orElse(wallX);
        return Math.max(wallX, rafterX) + 2;
    }
}
