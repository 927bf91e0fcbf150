package wallplate.solver.parts;

import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.solver.Expected;
import wallplate.task.DrawingTask;
import wallplate.task.PlainNumber;
import wallplate.task.Scale;
import wallplate.task.Sizes;

/**
 * The lines of one roof that its parts are set out from, in paper millimetres.
 *
 * <p>Axes: origin at the heel point, x to the inside of the building, y up. Along the slope is
 * {@code (cos a, sin a)}, square to it {@code (-sin a, cos a)}.
 */
public final class RoofFrame {

    /** The least set-in, in millimetres on paper, for which beam filling is drawn. */
    public static final double LEAST_BEAM_FILLING = 1.5;

    private final DrawingTask task;
    private final double pitchDegrees;
    private final double setIn;
    private final double insideX;

    private RoofFrame(DrawingTask task, double insideX) {
        this.task = task;
        this.pitchDegrees = task.sizes().number("pitch");
        this.setIn = setIn(task);
        this.insideX = insideX;
    }

    /** A roof that is cut off on the inside by an upright break line. */
    public static RoofFrame cutOffByBreakLine(DrawingTask task) {
        double inside = task.scale().onPaper(task.sizes().number("break-line.inside"));
        return new RoofFrame(task, inside - setIn(task));
    }

    /** A roof that ends at the given x on the inside. */
    public static RoofFrame endingAt(DrawingTask task, double insideX) {
        return new RoofFrame(task, insideX);
    }

    private static double setIn(DrawingTask task) {
        Sizes sizes = task.sizes();
        double spare = task.scale().onPaper(sizes.number("wall.thickness") - sizes.number("wall-plate.width"));
        return switch (sizes.word("wall.plate-flush").orElse("inner")) {
            case "outer" -> 0;
            case "centre" -> spare / 2;
            default -> spare;
        };
    }

    public DrawingTask task() {
        return task;
    }

    public Scale scale() {
        return task.scale();
    }

    /** The size of that key on paper. */
    public double mm(String key) {
        return scale().onPaper(task.sizes().number(key));
    }

    public boolean has(String keyOrPart) {
        return task.sizes().has(keyOrPart);
    }

    /** A key whose real size the task states under the given name. */
    public Expected.Length stated(String measuredKey, String sizeKey) {
        return Working.length(measuredKey, task.sizes().number(sizeKey), scale());
    }

    /** The size of that key as it is drawn, in words, such as {@code 12 mm}. */
    public String drawn(String sizeKey) {
        return drawnMm(mm(sizeKey));
    }

    /** A paper length as it is drawn, in words; what would round to nothing is told to the tenth. */
    public static String drawnMm(double exactMm) {
        double rounded = Working.roundedHalvesUp(exactMm);
        return (rounded == 0 ? PlainNumber.text(exactMm, 1) : PlainNumber.text(rounded)) + " mm";
    }

    /** The division that leads to the size on paper, with what it is of. */
    public String working(String what, String sizeKey) {
        return what + ": "
                + Working.length(sizeKey, task.sizes().number(sizeKey), scale()).working();
    }

    public double pitchDegrees() {
        return pitchDegrees;
    }

    public double sine() {
        return Math.sin(Math.toRadians(pitchDegrees));
    }

    public double cosine() {
        return Math.cos(Math.toRadians(pitchDegrees));
    }

    public double tangent() {
        return Math.tan(Math.toRadians(pitchDegrees));
    }

    public Vector alongSlope() {
        return new Vector(cosine(), sine());
    }

    public Vector squareToSlope() {
        return new Vector(-sine(), cosine());
    }

    /** From the outer wall face to the heel point. */
    public double setIn() {
        return setIn;
    }

    public double outerWallX() {
        return -setIn;
    }

    public double innerWallX() {
        return mm("wall.thickness") - setIn;
    }

    /** The underside of the wall plate, on which the wall ends. */
    public double wallTopY() {
        return -mm("wall-plate.depth");
    }

    /** Where the drawing ends on the inside. */
    public double insideX() {
        return insideX;
    }

    /** The rafter's plumb cut. */
    public double plumbCutX() {
        return -setIn - mm("rafter.overhang");
    }

    /** The line that lies that far above the rafter's underside, square to the slope. */
    public Line slopeLine(double aboveUnderside) {
        return new Line(Point.ORIGIN.plus(squareToSlope().times(aboveUnderside)), alongSlope());
    }

    /** The height at x of the line that lies that far above the rafter's underside, square to the slope. */
    public double slopeY(double x, double aboveUnderside) {
        return x * tangent() + aboveUnderside / cosine();
    }

    public Point onSlope(double x, double aboveUnderside) {
        return new Point(x, slopeY(x, aboveUnderside));
    }

    public double rafterTop() {
        return mm("rafter.depth");
    }

    /** The covering's underside, square to the slope above the rafter's underside. */
    public double coveringUnderside() {
        return rafterTop() + mm("support.depth");
    }

    public double coveringTop() {
        return coveringUnderside() + mm("covering.thickness");
    }

    /** Where the rafter's top meets its plumb cut. */
    public Point toe() {
        return onSlope(plumbCutX(), rafterTop());
    }

    public boolean hasBeamFilling() {
        return setIn >= LEAST_BEAM_FILLING;
    }

    /** The top of the tie beam, or the level of its underside where the task has none. */
    public double tieBeamTopY() {
        return has("tie-beam") ? mm("tie-beam.depth") : 0;
    }

    /** The outer face of whatever closes the rafters' ends: the fascia, else the plumb cut itself. */
    public double eavesFaceX() {
        return plumbCutX() - (has("fascia") ? mm("fascia.thickness") : 0);
    }

    /** The top of the fascia, against the underside of the covering at its outer face. */
    public double fasciaTopY() {
        return slopeY(eavesFaceX(), coveringUnderside());
    }

    /** The outer face of the gutter, else of whatever closes the rafters' ends. */
    public double gutterFaceX() {
        return eavesFaceX() - (has("gutter") ? mm("gutter.width") : 0);
    }

    /**
     * The rim of the gutter: a fifth of the fascia's depth below the fascia's top. Without a fascia it hangs the same
     * share of the plumb cut's height below the toe.
     */
    public double gutterRimY() {
        return has("fascia") ? fasciaTopY() - mm("fascia.depth") / 5 : toe().y() - rafterTop() / cosine() / 5;
    }

    /** What the task calls one of the supports. */
    String supportName() {
        return task.sizes().word("support.name").orElse("support");
    }

    /** The outermost of the parts that hang at the eaves. */
    double eavesX() {
        return has("barge-board") ? bargeEndX() : gutterFaceX();
    }

    /** The plumb end of the barge board. */
    public double bargeEndX() {
        return gutterFaceX() - mm("barge-board.clearance");
    }
}
