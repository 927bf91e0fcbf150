package wallplate.stroke;

import wallplate.geometry.Segment;

/**
 * One pencil line on a level page, whether drawn in one go, broken or gone over twice.
 *
 * @param centreLine in page millimetres
 * @param darkness mean ink on the centre line where there is ink, from 0 to 255
 * @param coverage the share of its length on which there is ink, from 0 to 1
 * @param residualMm root mean square distance of the ink's own centre from the straight line
 * @param inkAlong the ink on the centre line from start to end, one value every {@link #STEP_MM}
 */
public record Stroke(Segment centreLine, double darkness, double coverage, double residualMm, InkAlong inkAlong) {

    /** The distance between two values of {@link #inkAlong}. */
    public static final double STEP_MM = 0.5;

    public double length() {
        return centreLine.length();
    }
}
