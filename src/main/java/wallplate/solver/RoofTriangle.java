package wallplate.solver;

/**
 * The right triangle that every pitched roof is set out with: run, rise and the rafter's length along the slope.
 *
 * <p>The run is level, from the heel point, the outer edge of the wall plate, to the plumb line of the ridge, as the
 * carpentry manuals take it (US Army subcourse EN0069A: span between the outside edges of the plates, run half of
 * it). Any unit of length will do, the same throughout.
 *
 * @param pitchDegrees above level, more than 0 and less than 90
 */
public record RoofTriangle(double run, double pitchDegrees) {

    /** A roof whose slope is told by its rise over its run. */
    public static RoofTriangle ofRise(double run, double rise) {
        return new RoofTriangle(run, Math.toDegrees(Math.atan2(rise, run)));
    }

    public double rise() {
        return run * Math.tan(Math.toRadians(pitchDegrees));
    }

    /** From the heel to the ridge's plumb line, along the slope. */
    public double rafterLength() {
        return alongSlope(run);
    }

    /** The same with a tail that overhangs the heel by a level distance. */
    public double rafterLengthWithTail(double overhang) {
        return alongSlope(run + overhang);
    }

    /**
     * The same where a ridge board stands between the rafters: each is shortened by half the board's thickness,
     * measured square to the plumb cut, that is level.
     */
    public double rafterLengthAtRidgeBoard(double boardThickness) {
        return alongSlope(run - boardThickness / 2);
    }

    /** The length along the slope that lies over a level distance. */
    public double alongSlope(double level) {
        return level / Math.cos(Math.toRadians(pitchDegrees));
    }

    /** How many units level for one unit up: the slope 1 in so many. */
    public double levelForOneUp() {
        return 1 / Math.tan(Math.toRadians(pitchDegrees));
    }

    /** The rise over twelve units of run, as framing squares tell it. */
    public double riseInTwelve() {
        return 12 * Math.tan(Math.toRadians(pitchDegrees));
    }

    public double percent() {
        return 100 * Math.tan(Math.toRadians(pitchDegrees));
    }
}
