package wallplate.sheet.page;

import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;

/**
 * Fits a straight line to a pencil stroke in the picture itself, from the darkness across it, much finer than a pixel.
 *
 * <p>Profiles are read square to the line; their centroids under a window that narrows and follows the line are fitted
 * robustly. Neighbouring strokes 0.7 mm away do not pull it.
 */
public final class LineRefit {

    private static final double STATION = 0.3;
    private static final double REACH = 0.9;
    private static final double SAMPLE = 0.06;
    private static final int HALF = (int) Math.round(REACH / SAMPLE);
    private static final double[] WINDOWS = {0.4, 0.3, 0.22, 0.18, 0.18};
    /** A profile's centroid this far from the line counts little. */
    private static final double OUTLIER = 0.12;
    /** Darker than this share of the paper's grey is ink, not grain. */
    private static final double INK = 0.05;

    private final Picture picture;
    private final PageMap map;

    public LineRefit(Picture picture, PageMap map) {
        this.picture = picture;
        this.map = map;
    }

    /**
     * A stroke's true centre line.
     *
     * @param darkness mean darkness at the line, as a share of the paper's grey
     * @param coverage share of the line's length with ink
     * @param residual root mean square distance of the centroids from the line
     */
    public record Fitted(Segment segment, double darkness, double coverage, double residual) {}

    /** The line fitted, between the feet of the rough segment's ends; empty where there is hardly any ink. */
    public Optional<Fitted> fit(Segment rough) {
        double length = rough.length();
        int stations = Math.max(8, (int) Math.round(length / STATION));
        double[][] profiles = profiles(rough, stations);
        double offset = 0;
        double slope = 0;
        double[] centroids = new double[stations];
        double[] weights = new double[stations];
        for (double window : WINDOWS) {
            centroids(profiles, offset, slope, length, window, centroids, weights);
            double[] line = robustLine(centroids, weights, length, offset, slope);
            if (line.length == 0 || Math.abs(line[0]) > REACH || Math.abs(line[1]) * length / 2 > REACH) {
                return Optional.empty();
            }
            offset = line[0];
            slope = line[1];
        }
        return Optional.of(describe(rough, profiles, centroids, weights, offset, slope));
    }

    private Fitted describe(
            Segment rough, double[][] profiles, double[] centroids, double[] weights, double offset, double slope) {
        double length = rough.length();
        int stations = profiles.length;
        double squares = 0;
        double counted = 0;
        double darkness = 0;
        int inked = 0;
        for (int i = 0; i < stations; i++) {
            double expected = offset + slope * along(i, stations, length);
            double dark = darkest(profiles[i], expected);
            darkness += dark;
            if (dark > INK) {
                inked++;
            }
            double off = centroids[i] - expected;
            if (weights[i] > 0 && Math.abs(off) < 3 * OUTLIER) {
                squares += off * off;
                counted++;
            }
        }
        Line line = rough.line();
        Vector normal = line.direction().leftNormal();
        Point start = rough.start().plus(normal.times(offset - slope * length / 2));
        Point end = rough.end().plus(normal.times(offset + slope * length / 2));
        return new Fitted(
                new Segment(start, end),
                darkness / stations,
                (double) inked / stations,
                counted == 0 ? Double.MAX_VALUE : Math.sqrt(squares / counted));
    }

    private static double along(int station, int stations, double length) {
        return ((station + 0.5) / stations - 0.5) * length;
    }

    private static double darkest(double[] profile, double offset) {
        int centre = (int) Math.round(offset / SAMPLE) + HALF;
        double darkest = 0;
        for (int i = Math.max(0, centre - 2); i <= Math.min(profile.length - 1, centre + 2); i++) {
            darkest = Math.max(darkest, profile[i]);
        }
        return darkest;
    }

    /** Darkness across the line at each station, as a share of the paper beside it. */
    private double[][] profiles(Segment rough, int stations) {
        double[][] profiles = new double[stations][];
        Vector normal = rough.line().direction().leftNormal();
        for (int i = 0; i < stations; i++) {
            profiles[i] = profile(rough.at((i + 0.5) / stations), normal);
        }
        return profiles;
    }

    /**
     * Darkness across a line, as a share of the paper beside it, at the places that {@link #across} names.
     *
     * @param centre where the line is thought to be
     * @param normal a unit vector across it
     */
    double[] profile(Point centre, Vector normal) {
        double[] profile = new double[2 * HALF + 1];
        Point pixel = map.apply(centre);
        Vector step = map.apply(centre.plus(normal.times(REACH))).minus(pixel).times(SAMPLE / REACH);
        for (int k = -HALF; k <= HALF; k++) {
            profile[k + HALF] = grey(pixel.x() + step.x() * k, pixel.y() + step.y() * k);
        }
        toDarkness(profile);
        return profile;
    }

    /** By how many pixels both ends of a line differ along the picture's rows or its columns, whichever is less. */
    double offPixelAxes(Segment line) {
        Vector across = map.apply(line.end()).minus(map.apply(line.start()));
        return Math.min(Math.abs(across.x()), Math.abs(across.y()));
    }

    /** How far along the normal, in millimetres, a place of a profile lies. */
    static double across(int place) {
        return (place - HALF) * SAMPLE;
    }

    private static void toDarkness(double[] profile) {
        double[] sorted = profile.clone();
        java.util.Arrays.sort(sorted);
        double paper = Math.max(1, sorted[(int) (sorted.length * 0.75)]);
        for (int i = 0; i < profile.length; i++) {
            profile[i] = Math.max(0, (paper - profile[i]) / paper - INK / 2);
        }
    }

    private double grey(double x, double y) {
        double column = x - 0.5;
        double row = y - 0.5;
        int left = (int) Math.floor(column);
        int top = (int) Math.floor(row);
        int width = picture.widthPx();
        if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= picture.heightPx()) {
            return 255;
        }
        byte[] grey = picture.grey();
        int index = top * width + left;
        double right = column - left;
        double upper = (grey[index] & 0xff) * (1 - right) + (grey[index + 1] & 0xff) * right;
        double lower = (grey[index + width] & 0xff) * (1 - right) + (grey[index + width + 1] & 0xff) * right;
        return upper + (lower - upper) * (row - top);
    }

    private static void centroids(
            double[][] profiles,
            double offset,
            double slope,
            double length,
            double window,
            double[] centroids,
            double[] weights) {
        for (int i = 0; i < profiles.length; i++) {
            double expected = offset + slope * along(i, profiles.length, length);
            double centre = expected;
            double sum = 0;
            for (int turn = 0; turn < 2; turn++) {
                sum = 0;
                double moment = 0;
                for (int k = -HALF; k <= HALF; k++) {
                    double darkness = profiles[i][k + HALF];
                    double at = k * SAMPLE;
                    double distance = (at - centre) / window;
                    if (darkness == 0 || Math.abs(distance) > 3) {
                        continue;
                    }
                    double weight = darkness * Math.exp(-0.5 * distance * distance);
                    sum += weight;
                    moment += weight * at;
                }
                if (sum <= 0) {
                    break;
                }
                centre = moment / sum;
            }
            centroids[i] = centre;
            weights[i] = sum * SAMPLE < INK * 0.15 ? 0 : Math.min(1, sum * SAMPLE / 0.1);
        }
    }

    /** Offset and slope about the middle of the segment; no numbers where fewer than five profiles have ink. */
    private static double[] robustLine(
            double[] centroids, double[] weights, double length, double startOffset, double startSlope) {
        double offset = startOffset;
        double slope = startSlope;
        int stations = centroids.length;
        for (int turn = 0; turn < 4; turn++) {
            double scale = turn == 0 ? 4 * OUTLIER : OUTLIER;
            double w = 0, wx = 0, wy = 0, wxx = 0, wxy = 0;
            int used = 0;
            for (int i = 0; i < stations; i++) {
                if (weights[i] == 0) {
                    continue;
                }
                double x = along(i, stations, length);
                double off = (centroids[i] - offset - slope * x) / scale;
                double weight = weights[i] / (1 + off * off) / (1 + off * off);
                w += weight;
                wx += weight * x;
                wy += weight * centroids[i];
                wxx += weight * x * x;
                wxy += weight * x * centroids[i];
                used++;
            }
            double spread = w * wxx - wx * wx;
            if (used < 5 || spread <= 0) {
                return new double[0];
            }
            slope = (w * wxy - wx * wy) / spread;
            offset = (wy - slope * wx) / w;
        }
        return new double[] {offset, slope};
    }
}
