package wallplate.stroke;

import wallplate.geometry.Segment;

/**
 * One pencil line on a level page, whether drawn in one go, broken or gone over twice.
 *
 * @param centreLine in page millimetres
 * @param widthMm full width at half the darkness
 * @param darkness mean ink along the line, from 0 to 255
 * @param coverage the share of its length on which there is ink, from 0 to 1
 * @param residualMm root mean square distance of the ink's own centre from the straight line
 */
public record Stroke(Segment centreLine, double widthMm, double darkness, double coverage, double residualMm) {

    public double length() {
        return centreLine.length();
    }
}
