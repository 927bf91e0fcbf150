package wallplate.samples;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Looks for a line's ink where the truth says it lies: the middle of the darkness square to the line, as the median of
 * profiles along it.
 */
final class InkRefit {

    private static final double REACH_MM = 0.42;
    private static final double STEP_MM = 0.03;

    private final BufferedImage picture;
    private final PixelMap map;

    InkRefit(BufferedImage picture, PixelMap map) {
        this.picture = picture;
        this.map = map;
    }

    /** By how many millimetres the ink lies to the left of the line; empty where too little ink is found. */
    Optional<Double> offset(Segment line) {
        List<Double> offsets = new ArrayList<>();
        Vector left = line.vector().unit().leftNormal();
        int steps = (int) (line.length() / 0.25);
        for (int step = 2; step < steps - 2; step++) {
            profile(line.at((double) step / steps), left).ifPresent(offsets::add);
        }
        if (offsets.size() < 5) {
            return Optional.empty();
        }
        offsets.sort(null);
        return Optional.of(offsets.get(offsets.size() / 2));
    }

    private Optional<Double> profile(Point place, Vector left) {
        double lightest = 0;
        List<Double> tones = new ArrayList<>();
        for (double beside = -REACH_MM; beside <= REACH_MM; beside += STEP_MM) {
            double tone = tone(place.plus(left.times(beside)));
            tones.add(tone);
            lightest = Math.max(lightest, tone);
        }
        double weight = 0;
        double moment = 0;
        for (int at = 0; at < tones.size(); at++) {
            double dark = Math.max(0, lightest - tones.get(at) - 12);
            weight += dark;
            moment += dark * (-REACH_MM + at * STEP_MM);
        }
        return weight < 40 ? Optional.empty() : Optional.of(moment / weight);
    }

    private double tone(Point place) {
        Point pixel = map.toPixels(place.x(), place.y());
        double x = pixel.x() - 0.5;
        double y = pixel.y() - 0.5;
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        if (left < 0 || top < 0 || left + 1 >= picture.getWidth() || top + 1 >= picture.getHeight()) {
            return 255;
        }
        double fx = x - left;
        double fy = y - top;
        double upper = green(left, top) * (1 - fx) + green(left + 1, top) * fx;
        double lower = green(left, top + 1) * (1 - fx) + green(left + 1, top + 1) * fx;
        return upper * (1 - fy) + lower * fy;
    }

    private int green(int x, int y) {
        int bands = picture.getRaster().getNumBands();
        return picture.getRaster().getSample(x, y, bands == 1 ? 0 : 1);
    }
}
