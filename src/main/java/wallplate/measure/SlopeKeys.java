package wallplate.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.sheet.Calibration;
import wallplate.stroke.Edge;

/** Measures what slopes: the pitch, the rafter and the covering. */
final class SlopeKeys {

    /** What a slope's own direction leaves open, one standard deviation; found on the samples. */
    private static final double SLOPE_SIGMA_DEGREES = 0.03;

    private final Arrangement drawing;
    private final Calibration calibration;
    private final Findings findings;

    SlopeKeys(Arrangement drawing, Calibration calibration, Findings findings) {
        this.drawing = drawing;
        this.calibration = calibration;
        this.findings = findings;
    }

    /** Against the drawing's own level, which a T-square taped crooked turns with it. */
    void pitch() {
        RoofLines roof = drawing.roof();
        List<Edge> edges = Stream.of(roof.rafterBottom(), roof.rafterTop()).flatMap(Optional::stream).toList();
        if (edges.isEmpty()) {
            return;
        }
        double slope = edges.stream().mapToDouble(edge -> edge.line().inclinationDegrees()).average().orElseThrow();
        double stretch = calibration.stretchUncertaintyPercent() / 100;
        DrawnLevel level = drawing.level(calibration.levelUncertaintyDegrees());
        double pitch = slope - level.degrees();
        double byStretch = Math.toDegrees(stretch * Math.sin(Math.toRadians(pitch)) * Math.cos(Math.toRadians(pitch)));
        double sigma = Math.hypot(Math.hypot(SLOPE_SIGMA_DEGREES, level.deviation()), byStretch);
        findings.put("roof.pitch", new Finding.Quantity(pitch, sigma), edges.toArray(Edge[]::new));
    }

    void rafter() {
        RoofLines roof = drawing.roof();
        if (roof.rafterBottom().isPresent() && roof.rafterTop().isPresent()) {
            Edge bottom = roof.rafterBottom().get();
            Edge top = roof.rafterTop().get();
            findings.between("rafter.depth", bottom.distanceTo(top, drawing.view().slope()), bottom, top);
        }
        Optional<Point> heel = drawing.heel();
        if (heel.isPresent() && roof.rafterBottom().isPresent()) {
            Edge bottom = roof.rafterBottom().get();
            Edge plateTop = drawing.wall().plateTop().orElseThrow();
            double sigma = Math.hypot(bottom.offsetSigmaMm(), plateTop.offsetSigmaMm());
            findings.length("rafter.heel-offset", -bottom.line().distanceTo(heel.get()), sigma, bottom, plateTop);
            if (drawing.wall().isHeelOpen()) {
                findings.leaveOpen("other lines could be the wall plate's", "rafter.heel-offset");
            }
        }
        if (drawing.eaves().cut().isPresent() && drawing.wall().outer().isPresent()) {
            Edge cut = drawing.eaves().cut().get();
            Edge outer = drawing.wall().outer().get();
            findings.between("rafter.overhang", Level.rightOf(cut, outer), cut, outer);
            if (drawing.wall().areFacesOpen()) {
                findings.leaveOpen("other uprights could be the wall's faces", "rafter.overhang");
            }
        }
    }

    void covering() {
        RoofLines roof = drawing.roof();
        if (roof.coveringBottom().isEmpty() || roof.coveringTop().isEmpty()) {
            return;
        }
        Edge bottom = roof.coveringBottom().get();
        Edge top = roof.coveringTop().get();
        findings.between("covering.thickness", bottom.distanceTo(top, drawing.view().slope()), bottom, top);
        if (roof.rafterTop().isEmpty()) {
            return;
        }
        Edge rafterTop = roof.rafterTop().get();
        findings.between("covering.gap", rafterTop.distanceTo(bottom, drawing.view().slope()), rafterTop, bottom);
        EavesReader.Eaves eaves = drawing.eaves();
        if (eaves.cut().isPresent() && eaves.coveringEnd().isPresent()) {
            Edge cut = eaves.cut().get();
            Edge end = eaves.coveringEnd().get().edge();
            Point toe = Level.crossing(rafterTop, cut);
            double projection = toe.minus(end.middle()).dot(rafterTop.line().direction());
            findings.between("covering.projection", projection, cut, end);
            if (eaves.coveringEnd().get().probability() < Choice.LIKELY) {
                findings.leaveOpen("several lines could end the covering", "covering.projection");
            }
        }
    }
}
