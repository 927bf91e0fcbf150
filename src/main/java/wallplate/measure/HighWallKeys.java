package wallplate.measure;

import wallplate.geometry.Vector;
import wallplate.sheet.Calibration;
import wallplate.stroke.Edge;

/** Measures the high wall of a lean-to roof and its plate. */
final class HighWallKeys {

    /** How well a drawing's own level is known from its level and upright lines, as found on sheets whose level is known. */
    private static final double LEVEL_SIGMA_DEGREES = 0.07;

    private final Arrangement drawing;
    private final Calibration calibration;
    private final Findings findings;

    HighWallKeys(Arrangement drawing, Calibration calibration, Findings findings) {
        this.drawing = drawing;
        this.calibration = calibration;
        this.findings = findings;
    }

    void highWall() {
        drawing.highWall().ifPresent(this::measure);
    }

    private void measure(HighWallReader.HighWall high) {
        if (high.inner().isEmpty() || high.outer().isEmpty()) {
            return;
        }
        Edge inner = high.inner().get();
        findings.between("high-wall.thickness", Level.rightOf(inner, high.outer().get()), inner, high.outer().get());
        drawing.wall().inner().ifPresent(low ->
                findings.between("high-wall.clear-span", Level.rightOf(low, inner), low, inner));
        if (high.isPlateAbsent()) {
            findings.absent("high-plate.width", "high-plate.depth", "high-plate.rise", "high-plate.crossed");
        }
        high.plate().ifPresent(plate -> plate(plate, high.top().orElseThrow()));
        if (high.areFacesOpen()) {
            findings.unsettle(
                    "other uprights could be the faces of the high wall", "high-wall.thickness", "high-wall.clear-span");
        }
        if (high.isPlateOpen()) {
            findings.unsettle(
                    "other lines could be the high plate's", "high-plate.width", "high-plate.depth", "high-plate.crossed");
        }
        if (drawing.wall().areFacesOpen()) {
            findings.unsettle("other uprights could be the wall's faces", "high-wall.clear-span");
        }
        if (drawing.wall().areFacesOpen() || drawing.wall().isPlateOpen()) {
            findings.unsettle("other lines could be the low wall's", "high-plate.rise");
        }
    }

    private void plate(HighWallReader.Plate plate, Edge bottom) {
        findings.between("high-plate.width", Level.rightOf(plate.inner(), plate.outer()), plate.inner(), plate.outer());
        findings.between("high-plate.depth", Level.above(bottom, plate.top()), bottom, plate.top());
        Diagonals.put(findings, "high-plate.crossed",
                new Diagonals(drawing.view()).share(plate.inner(), plate.outer(), bottom, plate.top()));
        drawing.wall().plateTop().ifPresent(low -> rise(low, plate.top()));
    }

    /** Square to the drawing's own level, over a distance at which a tenth of a degree counts. */
    private void rise(Edge low, Edge high) {
        DrawnLevel level = drawing.level(calibration.levelUncertaintyDegrees());
        Vector apart = high.middle().minus(low.middle()).rotatedDegrees(-level.degrees());
        double byLevel = Math.abs(apart.x()) * Math.tan(Math.toRadians(Math.max(level.deviation(), LEVEL_SIGMA_DEGREES)));
        double sigma = Math.hypot(byLevel, Math.hypot(low.offsetSigmaMm(), high.offsetSigmaMm()));
        findings.length("high-plate.rise", apart.y(), sigma, low, high);
    }
}
