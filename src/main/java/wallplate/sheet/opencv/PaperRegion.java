package wallplate.sheet.opencv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import wallplate.geometry.Point;
import wallplate.sheet.ScanPage.Picture;

/**
 * Parts the paper from the desk, or from a scanner's lid, in a coarse copy of the picture.
 *
 * <p>The drawing is closed up first. Then the picture is flooded from its border and from its middle at once, over the
 * flat places before the steep ones, so that the two floods meet along the paper's edges however uneven the light is.
 */
public final class PaperRegion {

    private static final int LONGER_SIDE = 640;
    private static final double CLOSING_SHARE = 0.018;
    private static final int LEVELS = 256;
    private static final byte DESK = 1;
    private static final byte PAPER = 2;
    /** The middle of the picture shows paper: the half axes of that ellipse as a share of the picture's. */
    private static final double MIDDLE = 0.35;

    private final int width;
    private final int height;
    private final double scaleX;
    private final double scaleY;
    private final byte[] grey;
    private final byte[] steepness;

    private PaperRegion(Picture picture, int width, int height, byte[] grey, byte[] steepness) {
        this.width = width;
        this.height = height;
        this.scaleX = (double) picture.widthPx() / width;
        this.scaleY = (double) picture.heightPx() / height;
        this.grey = grey;
        this.steepness = steepness;
    }

    /** The region to be looked for in a picture. */
    public static PaperRegion in(Picture picture) {
        try (MatScope scope = new MatScope()) {
            Mat full = PageWarp.matrix(picture, scope);
            double reduction = LONGER_SIDE / (double) Math.max(picture.widthPx(), picture.heightPx());
            int width = (int) Math.round(picture.widthPx() * reduction);
            int height = (int) Math.round(picture.heightPx() * reduction);
            Mat small = scope.matrix();
            Imgproc.resize(full, small, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
            Mat closed = closed(small, scope);
            return new PaperRegion(picture, width, height, bytes(closed), steepness(closed, scope));
        }
    }

    /**
     * Points on the outline of the paper, in pixels of the picture; those along the picture's own border are left out.
     *
     * @param leastDifference how much a place on the border must differ from the middle's grey to count as no paper, as
     *     a share of that grey; 0 where no paper touches the border
     */
    public List<Point> outline(double leastDifference) {
        byte[] labels = seeds(leastDifference);
        flood(labels, steepness, width);
        return outline(labels, width, height, scaleX, scaleY);
    }

    private static Mat closed(Mat small, MatScope scope) {
        int diameter = 2 * (int) Math.round(LONGER_SIDE * CLOSING_SHARE / 2) + 1;
        Mat disc = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
        Mat closed = scope.matrix();
        Imgproc.morphologyEx(small, closed, Imgproc.MORPH_CLOSE, disc);
        Imgproc.GaussianBlur(closed, closed, new Size(0, 0), 1.0);
        return closed;
    }

    private static byte[] steepness(Mat closed, MatScope scope) {
        Mat three = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(3, 3)));
        Mat gradient = scope.matrix();
        Imgproc.morphologyEx(closed, gradient, Imgproc.MORPH_GRADIENT, three);
        return bytes(gradient);
    }

    private static byte[] bytes(Mat matrix) {
        byte[] bytes = new byte[matrix.rows() * matrix.cols()];
        matrix.get(0, 0, bytes);
        return bytes;
    }

    private byte[] seeds(double leastDifference) {
        byte[] labels = new byte[width * height];
        long sum = 0;
        int count = 0;
        for (int at = 0; at < labels.length; at++) {
            if (isMiddle(at % width, at / width, width, height)) {
                labels[at] = PAPER;
                sum += grey[at] & 0xff;
                count++;
            }
        }
        double paper = (double) sum / count;
        for (int at = 0; at < labels.length; at++) {
            boolean differs = Math.abs((grey[at] & 0xff) - paper) >= leastDifference * paper;
            if (isBorder(at % width, at / width, width, height) && differs) {
                labels[at] = DESK;
            }
        }
        return labels;
    }

    private static boolean isBorder(int x, int y, int width, int height) {
        return x == 0 || y == 0 || x == width - 1 || y == height - 1;
    }

    private static boolean isMiddle(int x, int y, int width, int height) {
        double dx = (x - width / 2.0) / (width / 2.0 * MIDDLE);
        double dy = (y - height / 2.0) / (height / 2.0 * MIDDLE);
        return dx * dx + dy * dy < 1;
    }

    private static void flood(byte[] labels, byte[] steepness, int width) {
        Waiting waiting = new Waiting(labels.length);
        for (int at = 0; at < labels.length; at++) {
            if (labels[at] != 0) {
                waiting.add(steepness[at] & 0xff, at);
            }
        }
        int level = 0;
        while (level < LEVELS) {
            int at = waiting.next(level);
            if (at < 0) {
                level++;
                continue;
            }
            spread(at, level, steepness, labels, waiting, width);
        }
    }

    private static void spread(int at, int level, byte[] steepness, byte[] labels, Waiting waiting, int width) {
        for (int step : new int[] {-1, 1, -width, width}) {
            int next = at + step;
            boolean wrapped = Math.abs(step) == 1 && next / width != at / width;
            if (next < 0 || next >= labels.length || wrapped || labels[next] != 0) {
                continue;
            }
            labels[next] = labels[at];
            waiting.add(Math.max(level, steepness[next] & 0xff), next);
        }
    }

    /** The places from which a label spreads, by their steepness, in the order in which they came; each comes once. */
    private static final class Waiting {

        private static final int NONE = -1;

        private final int[] first = new int[LEVELS];
        private final int[] last = new int[LEVELS];
        private final int[] behind;

        Waiting(int places) {
            behind = new int[places];
            Arrays.fill(first, NONE);
        }

        void add(int level, int at) {
            behind[at] = NONE;
            if (first[level] == NONE) {
                first[level] = at;
            } else {
                behind[last[level]] = at;
            }
            last[level] = at;
        }

        /** The next of a level, which no longer waits; negative where there is none. */
        int next(int level) {
            int at = first[level];
            if (at != NONE) {
                first[level] = behind[at];
            }
            return at;
        }
    }

    private static List<Point> outline(byte[] labels, int width, int height, double scaleX, double scaleY) {
        List<Point> outline = new ArrayList<>();
        for (int y = 3; y < height - 3; y++) {
            for (int x = 3; x < width - 3; x++) {
                int at = y * width + x;
                if (labels[at] == PAPER
                        && (labels[at - 1] == DESK
                                || labels[at + 1] == DESK
                                || labels[at - width] == DESK
                                || labels[at + width] == DESK)) {
                    outline.add(new Point((x + 0.5) * scaleX, (y + 0.5) * scaleY));
                }
            }
        }
        return outline;
    }
}
