package wallplate.samples;

import wallplate.geometry.Point;

/**
 * The graphite on a sheet as the picture's pixels see it: optical density, adding up where strokes cross.
 *
 * <p>A stroke is a band with soft edges whose ends are as round as the pencil's point. Inside it graphite holds to the paper's grain, the better the harder the pencil
 * is pressed.
 */
final class GraphiteLayer {

    private static final double SOFT_EDGE_MM = 0.05;
    private static final int SAMPLES = 3;

    private final int widthPx;
    private final int heightPx;
    private final float[] density;
    private final PixelMap map;
    private final Grain grain;

    GraphiteLayer(int widthPx, int heightPx, PixelMap map, Grain grain) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.density = new float[widthPx * heightPx];
        this.map = map;
        this.grain = grain;
    }

    /** How much of the light the graphite takes at a pixel, 0 to 1. */
    double taken(int pixel) {
        float here = density[pixel];
        return here == 0 ? 0 : 1 - Math.exp(-here);
    }

    void draw(PencilStroke stroke) {
        double full = -Math.log(1 - Math.min(0.97, stroke.darkness()));
        for (int step = 0; step + 1 < stroke.x().length; step++) {
            double pressure = (stroke.pressure()[step] + stroke.pressure()[step + 1]) / 2;
            if (isDown(stroke, step) && isDown(stroke, step + 1)) {
                band(stroke, step, pressure, full);
            }
        }
    }

    private static boolean isDown(PencilStroke stroke, int at) {
        return at >= 0 && at < stroke.pressure().length && stroke.pressure()[at] > 0;
    }

    /** The piece of a stroke between two of its points, as a band of graphite. */
    private void band(PencilStroke stroke, int step, double pressure, double full) {
        double fromX = stroke.x()[step];
        double fromY = stroke.y()[step];
        double runX = stroke.x()[step + 1] - fromX;
        double runY = stroke.y()[step + 1] - fromY;
        double length = Math.hypot(runX, runY);
        if (length == 0) {
            return;
        }
        double half = stroke.widthMm() / 2 * (0.75 + 0.27 * pressure);
        Band band = new Band(
                fromX + runX / 2, fromY + runY / 2, runX, runY, length, half, !isDown(stroke, step - 1), !isDown(stroke, step + 2));
        Surroundings near = Surroundings.of(map, band.middleX, band.middleY);
        double reach = (length / 2 + half + SOFT_EDGE_MM) * near.pixelsPerMm();
        int left = Math.max(0, (int) Math.floor(near.centre.x() - reach));
        int right = Math.min(widthPx - 1, (int) Math.floor(near.centre.x() + reach));
        int top = Math.max(0, (int) Math.floor(near.centre.y() - reach));
        int bottom = Math.min(heightPx - 1, (int) Math.floor(near.centre.y() + reach));
        double threshold = 0.62 - 0.32 * pressure;
        double strength = full * Math.min(1.1, 0.3 + 0.75 * pressure);
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                double covered = covered(x, y, band, near, threshold, stroke.grain());
                if (covered > 0) {
                    density[y * widthPx + x] += (float) (covered / (SAMPLES * SAMPLES) * strength);
                }
            }
        }
    }

    /** A straight piece of a stroke, in sheet millimetres. */
    private record Band(
            double middleX, double middleY, double runX, double runY, double length, double half, boolean isFirst, boolean isLast) {

        /** How far a place is from the middle line, seen along and beside it from its start; infinite where the next piece has it. */
        double from(double along, double beside) {
            if (along < 0) {
                return isFirst ? Math.hypot(along, beside) : Double.POSITIVE_INFINITY;
            }
            if (along >= length) {
                return isLast ? Math.hypot(along - length, beside) : Double.POSITIVE_INFINITY;
            }
            return Math.abs(beside);
        }
    }

    /** The map close to one place, as good as straight: from pixels about the centre back to millimetres about the place. */
    private record Surroundings(Point centre, double ax, double ay, double bx, double by) {

        static Surroundings of(PixelMap map, double x, double y) {
            Point centre = map.toPixels(x, y);
            Point east = map.toPixels(x + 0.01, y);
            Point north = map.toPixels(x, y + 0.01);
            return new Surroundings(
                    centre, (east.x() - centre.x()) * 100, (east.y() - centre.y()) * 100,
                    (north.x() - centre.x()) * 100, (north.y() - centre.y()) * 100);
        }

        double pixelsPerMm() {
            return Math.max(Math.hypot(ax, ay), Math.hypot(bx, by));
        }

        double determinant() {
            return ax * by - bx * ay;
        }
    }

    /** How much of a pixel's samples the band covers, each by as much as the grain there holds. */
    private double covered(int x, int y, Band band, Surroundings near, double threshold, double grainStrength) {
        double determinant = near.determinant();
        double sum = 0;
        for (int sample = 0; sample < SAMPLES * SAMPLES; sample++) {
            double dx = x + (sample % SAMPLES + 0.5) / SAMPLES - near.centre.x();
            double dy = y + (sample / SAMPLES + 0.5) / SAMPLES - near.centre.y();
            double offX = (near.by * dx - near.bx * dy) / determinant;
            double offY = (near.ax * dy - near.ay * dx) / determinant;
            double along = (offX * band.runX + offY * band.runY) / band.length + band.length / 2;
            double beside = (offX * band.runY - offY * band.runX) / band.length;
            double edge = (band.half - band.from(along, beside)) / SOFT_EDGE_MM + 0.5;
            if (edge > 0) {
                sum += Math.min(1, edge) * held(band.middleX + offX, band.middleY + offY, threshold, grainStrength);
            }
        }
        return sum;
    }

    private double held(double x, double y, double threshold, double strength) {
        double rough = 0.6 * grain.at(x / 0.11, y / 0.11) + 0.4 * grain.at(x / 0.26 + 91, y / 0.26 + 17);
        double caught = Math.max(0, Math.min(1, (rough - threshold) / 0.26));
        return 1 - strength + strength * caught * 1.35;
    }

    /** A soft grey patch of rubbed graphite. */
    void smudge(SheetDrawing.Smudge smudge) {
        double reach = Math.max(smudge.radiusX(), smudge.radiusY()) * 2.2;
        double[] box = {1e9, 1e9, -1e9, -1e9};
        for (int corner = 0; corner < 4; corner++) {
            Point place = map.toPixels(
                    smudge.centre().x() + (corner % 2 == 0 ? -reach : reach), smudge.centre().y() + (corner / 2 == 0 ? -reach : reach));
            box[0] = Math.min(box[0], place.x());
            box[1] = Math.min(box[1], place.y());
            box[2] = Math.max(box[2], place.x());
            box[3] = Math.max(box[3], place.y());
        }
        double cosine = Math.cos(Math.toRadians(smudge.turnDegrees()));
        double sine = Math.sin(Math.toRadians(smudge.turnDegrees()));
        for (int y = Math.max(0, (int) box[1]); y < Math.min(heightPx, box[3]); y++) {
            for (int x = Math.max(0, (int) box[0]); x < Math.min(widthPx, box[2]); x++) {
                Point place = map.toSheet(x + 0.5, y + 0.5);
                double dx = place.x() - smudge.centre().x();
                double dy = place.y() - smudge.centre().y();
                double u = (dx * cosine + dy * sine) / smudge.radiusX();
                double v = (dy * cosine - dx * sine) / smudge.radiusY();
                double fall = Math.exp(-(u * u + v * v));
                if (fall > 0.01) {
                    double blotch = 0.3 + 1.4 * grain.at(place.x() / 2.1 + smudge.radiusX(), place.y() / 2.1);
                    density[y * widthPx + x] += (float) (smudge.darkness() * fall * blotch);
                }
            }
        }
    }
}
