package wallplate.samples;

import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** The paper itself: its edges, tooth, folds and punched holes. Places are millimetres on the sheet. */
final class PaperSurface {

    private final SheetDrawing sheet;
    private final Grain grain;
    private final List<Line> folds;
    private final double tooth;
    private final double softEdgeMm;

    /** Tooth is the standard deviation of the paper's lightness, as a share. */
    PaperSurface(SheetDrawing sheet, Grain grain, double tooth, double softEdgeMm) {
        this.sheet = sheet;
        this.grain = grain;
        this.folds = sheet.creases().stream().map(Segment::line).toList();
        this.tooth = tooth;
        this.softEdgeMm = Math.max(0.06, softEdgeMm);
    }

    /** 1 on the paper, 0 beside it or in a hole, between at an edge. */
    double covers(Point place) {
        double inside = insideBy(place);
        double covered = Math.max(0, Math.min(1, inside / softEdgeMm + 0.5));
        for (Point hole : sheet.holes()) {
            double beyond = place.distanceTo(hole) - 2.9;
            covered = Math.min(covered, Math.max(0, Math.min(1, beyond / softEdgeMm + 0.5)));
        }
        return covered;
    }

    private double insideBy(Point place) {
        double across = Math.min(place.x(), sheet.paper().width() - place.x());
        double up = Math.min(place.y(), sheet.paper().height() - place.y());
        return Math.min(across, up);
    }

    /** The paper's lightness against its mean. */
    double tone(Point place) {
        double fine = grain.at(place.x() / 0.14 + 33, place.y() / 0.14) - 0.5;
        double coarse = grain.at(place.x() / 1.7, place.y() / 1.7 + 57) - 0.5;
        double tone = 1 + tooth * (3.2 * fine + 1.6 * coarse);
        for (Line fold : folds) {
            double beside = fold.distanceTo(place);
            tone -= 0.10 * Math.exp(-beside * beside / 0.18) - 0.05 * Math.exp(-(beside - 0.8) * (beside - 0.8) / 0.4);
        }
        return tone;
    }

    /** How dark the shadow is that the paper throws beside its edge, fading over the given width. */
    double shadow(Point place, double widthMm, double depth) {
        double beside = -insideBy(place);
        return beside <= 0 || beside > widthMm * 3 ? 0 : depth * Math.exp(-beside / widthMm);
    }
}
