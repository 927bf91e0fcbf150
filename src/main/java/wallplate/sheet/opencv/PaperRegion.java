package wallplate.sheet.opencv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
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
    private static final int CLOSING_RADIUS = 6;
    /** The square in which texture is looked at, in places of the coarse copy; wider than two lines. */
    private static final int TEXTURE_WINDOW = 15;

    private static final int LEVELS = 256;
    private static final byte DESK = 1;
    private static final byte PAPER = 2;
    /** The middle of the picture shows paper: the half axes of that ellipse as a share of the picture's. */
    private static final double MIDDLE = 0.35;

    private final int width;
    private final int height;
    private final double scaleX;
    private final double scaleY;
    private final byte[] picture;
    private final byte[] told;
    private final byte[] steepness;

    private PaperRegion(int width, int height, double scaleX, double scaleY, byte[] picture, BiFunction<Mat, MatScope, Mat> evidence) {
        this.width = width;
        this.height = height;
        this.scaleX = scaleX;
        this.scaleY = scaleY;
        this.picture = picture;
        try (MatScope scope = new MatScope()) {
            Mat small = scope.keep(new Mat(height, width, CvType.CV_8UC1));
            small.put(0, 0, picture);
            Mat evident = evidence.apply(small, scope);
            this.told = bytes(evident);
            this.steepness = bytes(steepness(evident, scope));
        }
    }

    /** The region to be looked for in a picture, told from what lies around it by its brightness. */
    public static PaperRegion in(Picture picture) {
        try (MatScope scope = new MatScope()) {
            Mat full = PageWarp.matrix(picture, scope);
            double reduction = LONGER_SIDE / (double) Math.max(picture.widthPx(), picture.heightPx());
            int width = (int) Math.round(picture.widthPx() * reduction);
            int height = (int) Math.round(picture.heightPx() * reduction);
            Mat small = scope.matrix();
            Imgproc.resize(full, small, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
            double scaleX = (double) picture.widthPx() / width;
            double scaleY = (double) picture.heightPx() / height;
            return new PaperRegion(width, height, scaleX, scaleY, bytes(small), PaperRegion::closed);
        }
    }

    /**
     * The same with the picture carried on beyond its border: a scanner's dark lid may show beside the paper as a strip no
     * wider than lines are, and is none.
     */
    public PaperRegion beyondBorder() {
        return new PaperRegion(width, height, scaleX, scaleY, picture, PaperRegion::closedBeyondBorder);
    }

    /** The same told by its smoothness: a desk's grain may be as bright as paper is. */
    public PaperRegion byTexture() {
        return new PaperRegion(width, height, scaleX, scaleY, picture, PaperRegion::texture);
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
        Mat closed = scope.matrix();
        Imgproc.morphologyEx(small, closed, Imgproc.MORPH_CLOSE, disc(scope));
        Imgproc.GaussianBlur(closed, closed, new Size(0, 0), 1.0);
        return closed;
    }

    private static Mat closedBeyondBorder(Mat small, MatScope scope) {
        int rim = CLOSING_RADIUS;
        Mat wide = scope.matrix();
        Core.copyMakeBorder(small, wide, rim, rim, rim, rim, Core.BORDER_REPLICATE);
        Mat closed = closed(wide, scope);
        return scope.keep(scope.keep(closed.submat(new Rect(rim, rim, small.cols(), small.rows()))).clone());
    }

    private static Mat disc(MatScope scope) {
        int diameter = 2 * CLOSING_RADIUS + 1;
        return scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
    }

    /** How steep the picture is at most places around each: lines on paper leave most places flat, the grain of wood few. */
    private static Mat texture(Mat small, MatScope scope) {
        Mat texture = scope.matrix();
        Imgproc.medianBlur(steepness(small, scope), texture, TEXTURE_WINDOW);
        return texture;
    }

    private static Mat steepness(Mat picture, MatScope scope) {
        Mat three = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(3, 3)));
        Mat gradient = scope.matrix();
        Imgproc.morphologyEx(picture, gradient, Imgproc.MORPH_GRADIENT, three);
        return gradient;
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
                sum += told[at] & 0xff;
                count++;
            }
        }
        double paper = (double) sum / count;
        for (int at = 0; at < labels.length; at++) {
            boolean differs = Math.abs((told[at] & 0xff) - paper) >= leastDifference * paper;
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
