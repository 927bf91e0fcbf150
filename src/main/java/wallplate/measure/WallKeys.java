package wallplate.measure;

import java.util.List;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/** Measures the wall with its plate and the beam-filling above it. */
final class WallKeys {

    private static final String OTHER_PLATE = "other lines could be the wall plate's";

    /** Clear of the lines around the beam-filling, whose own ink says nothing of hatching. */
    private static final double CLEAR_OF_LINES_MM = 0.4;

    private static final double CLEAR_OF_SLOPES_MM = 0.45;

    private static final double CLEAR_OF_BOX_MM = 0.7;

    /** The least width of the beam-filling that is looked at. */
    private static final double LEAST_WIDTH_MM = 1.5;

    /** More ink than this in the mean is hatching. */
    private static final double HATCHED_INK = 0.08;

    /** Fewer of the edges of what is there run at 45 degrees where it is no hatching: counted on sheets with and without. */
    private static final double LEAST_AT_45 = 0.22;

    /** A leader or a construction line leaves up to this. */
    private static final double STRAY_INK = 0.045;

    private final Arrangement drawing;
    private final Findings findings;

    WallKeys(Arrangement drawing, Findings findings) {
        this.drawing = drawing;
        this.findings = findings;
    }

    void wallAndPlate() {
        WallReader.Wall wall = drawing.wall();
        if (wall.outer().isPresent() && wall.inner().isPresent()) {
            Edge outer = wall.outer().get();
            Edge inner = wall.inner().get();
            findings.between("wall.thickness", Level.rightOf(outer, inner), outer, inner);
            if (wall.areFacesOpen()) {
                findings.leaveOpen("other uprights could be the wall's faces", "wall.thickness");
            }
        }
        if (wall.plateOuter().isEmpty() || wall.plateTop().isEmpty() || wall.top().isEmpty()) {
            return;
        }
        Edge left = wall.plateOuter().get();
        Edge right = wall.plateInner().orElseThrow();
        Edge top = wall.plateTop().get();
        Edge bottom = wall.top().get();
        findings.between("wall-plate.width", Level.rightOf(left, right), left, right);
        findings.between("wall-plate.depth", Level.above(bottom, top), bottom, top);
        Diagonals.put(findings, "wall-plate.crossed", new Diagonals(drawing.view()).share(left, right, bottom, top));
        if (wall.isPlateWidthOpen()) {
            findings.leaveOpen(OTHER_PLATE, "wall-plate.width", "wall-plate.crossed");
        }
        if (wall.isPlateDepthOpen()) {
            findings.leaveOpen(OTHER_PLATE, "wall-plate.depth", "wall-plate.crossed");
        }
    }

    /**
     * Whether the beam filling is hatched.
     *
     * @param supports the boxes between the rafter and the covering, one of which may stand within it
     */
    void beamFilling(List<BoxRow.Box> supports) {
        RoofLines roof = drawing.roof();
        if (!drawing.expectation().asks("beam-filling.hatched") || drawing.wall().outer().isEmpty()
                || roof.rafterTop().isEmpty() || roof.coveringBottom().isEmpty()) {
            return;
        }
        Edge outer = drawing.wall().outer().get();
        Edge low = roof.rafterTop().get();
        Edge high = roof.coveringBottom().get();
        double setIn = drawing.heel()
                .map(point -> point.x() - outer.xAt(point.y()))
                .orElse(drawing.expectation().setIn());
        double faceX = outer.xAt(low.middle().y());
        double leftX = faceX + CLEAR_OF_LINES_MM;
        double rightX = faceX + Math.max(setIn, LEAST_WIDTH_MM) - CLEAR_OF_LINES_MM;
        Pattern pattern = new Pattern(drawing.view());
        Pattern.Region filling = new BetweenSlopes(low, high, leftX, rightX, supports);
        OptionalDouble ink = pattern.meanInk(filling);
        if (ink.isEmpty()) {
            findings.uncertain("other lines take up the place where the beam filling would be hatched", "beam-filling.hatched");
        } else if (ink.getAsDouble() > STRAY_INK && ink.getAsDouble() < HATCHED_INK) {
            findings.uncertain("too little ink is there for hatching and too much for none", "beam-filling.hatched");
        } else if (ink.getAsDouble() >= HATCHED_INK && pattern.edgesAt45(filling) < LEAST_AT_45) {
            findings.uncertain("what lies where the beam filling would be hatched does not run at 45 degrees", "beam-filling.hatched");
        } else {
            findings.yesNo("beam-filling.hatched", ink.getAsDouble() >= HATCHED_INK);
        }
    }

    /** The region between two sloping lines and two uprights, clear of all four. */
    private record BetweenSlopes(Edge low, Edge high, double left, double right, List<BoxRow.Box> supports)
            implements Pattern.Region {

        @Override
        public double lowY() {
            return low.yAt(left);
        }

        @Override
        public double highY() {
            return high.yAt(right);
        }

        @Override
        public double leftX(double y) {
            return left;
        }

        @Override
        public double rightX(double y) {
            return right;
        }

        @Override
        public boolean contains(double x, double y) {
            return y > low.yAt(x) + CLEAR_OF_SLOPES_MM
                    && y < high.yAt(x) - CLEAR_OF_SLOPES_MM
                    && supports.stream().noneMatch(box -> isAt(box, low.line().positionOf(new Point(x, y))));
        }

        private static boolean isAt(BoxRow.Box box, double position) {
            return position > box.from() - CLEAR_OF_BOX_MM && position < box.to() + CLEAR_OF_BOX_MM;
        }
    }
}
