package wallplate.sheet.opencv;

import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import wallplate.geometry.Point;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.PageMap;

/** Resamples a picture onto a page of the wanted resolution, in one step whatever the map is made of. */
public final class PageWarp {

    /** Rows that are mapped at a time, which bounds the memory that the coordinates take. */
    private static final int STRIP = 256;

    private PageWarp() {}

    /**
     * The page's grey, cubic between pixels; averaged first where the picture is finer than the page.
     *
     * @param map from page millimetres to the picture's pixels
     * @param outside the grey of places that the picture does not cover
     */
    public static GreyPage warp(
            Picture picture, PageMap map, double widthMm, double heightMm, double pixelsPerMm, int outside) {
        int width = (int) Math.round(widthMm * pixelsPerMm);
        int height = (int) Math.round(heightMm * pixelsPerMm);
        byte[] grey = new byte[width * height];
        double finer = map.pixelsPerMmAt(new Point(widthMm / 2, heightMm / 2)) / pixelsPerMm;
        try (MatScope scope = new MatScope()) {
            Mat source = reduced(picture, finer, scope);
            double reduction = (double) picture.widthPx() / source.cols();
            Coordinates coordinates = new Coordinates(map, width, height / pixelsPerMm, pixelsPerMm, reduction);
            Mat columns = scope.matrix();
            Mat rows = scope.matrix();
            Mat strip = scope.matrix();
            for (int top = 0; top < height; top += STRIP) {
                int count = Math.min(STRIP, height - top);
                coordinates.fill(top, count, columns, rows);
                Imgproc.remap(
                        source, strip, columns, rows, Imgproc.INTER_CUBIC, Core.BORDER_CONSTANT, new Scalar(outside));
                byte[] bytes = new byte[count * width];
                strip.get(0, 0, bytes);
                System.arraycopy(bytes, 0, grey, top * width, bytes.length);
            }
        }
        return new GreyPage(width, height, pixelsPerMm, grey);
    }

    /** The picture made coarser by a whole number, and smoothed by what is left to smooth. */
    private static Mat reduced(Picture picture, double finer, MatScope scope) {
        Mat full = matrix(picture, scope);
        int factor = (int) Math.floor(finer + 0.05);
        Mat source = full;
        if (factor >= 2) {
            source = scope.matrix();
            int columns = picture.widthPx() / factor;
            int rows = picture.heightPx() / factor;
            Mat whole = scope.keep(full.submat(new Rect(0, 0, columns * factor, rows * factor)));
            Imgproc.resize(whole, source, new Size(columns, rows), 0, 0, Imgproc.INTER_AREA);
        }
        double rest = finer / Math.max(1, factor);
        if (rest > 1.25) {
            Mat smooth = scope.matrix();
            Imgproc.GaussianBlur(source, smooth, new Size(0, 0), 0.35 * rest);
            return smooth;
        }
        return source;
    }

    static Mat matrix(Picture picture, MatScope scope) {
        Mat full = scope.keep(new Mat(picture.heightPx(), picture.widthPx(), CvType.CV_8UC1));
        full.put(0, 0, picture.grey());
        return full;
    }

    /** The pixel of the reduced picture for every pixel of a strip of the page. */
    private static final class Coordinates {

        private final PageMap map;
        private final int width;
        private final double heightMm;
        private final double pixelsPerMm;
        private final double reduction;

        Coordinates(PageMap map, int width, double heightMm, double pixelsPerMm, double reduction) {
            this.map = map;
            this.width = width;
            this.heightMm = heightMm;
            this.pixelsPerMm = pixelsPerMm;
            this.reduction = Math.round(reduction);
        }

        void fill(int top, int count, Mat columns, Mat rows) {
            float[] x = new float[count * width];
            float[] y = new float[count * width];
            if (isAffine()) {
                fillAffinely(top, count, x, y);
            } else {
                fillThroughLens(top, count, x, y);
            }
            columns.create(count, width, CvType.CV_32FC1);
            rows.create(count, width, CvType.CV_32FC1);
            columns.put(0, 0, x);
            rows.put(0, 0, y);
        }

        /** As on most scans: no perspective, no lens. */
        private boolean isAffine() {
            double[] m = map.matrix();
            return m[6] == 0 && m[7] == 0 && m[8] == 1 && map.lens().equals(PageMap.Lens.STRAIGHT);
        }

        /** The same as through a lens that bends nothing, to the last bit, with less to reckon for each pixel. */
        private void fillAffinely(int top, int count, float[] x, float[] y) {
            double[] m = map.matrix();
            double[] acrossX = new double[width];
            double[] acrossY = new double[width];
            for (int column = 0; column < width; column++) {
                double xMm = (column + 0.5) / pixelsPerMm;
                acrossX[column] = m[0] * xMm;
                acrossY[column] = m[3] * xMm;
            }
            for (int row = 0; row < count; row++) {
                double yMm = heightMm - (top + row + 0.5) / pixelsPerMm;
                double upX = m[1] * yMm;
                double upY = m[4] * yMm;
                int start = row * width;
                for (int column = 0; column < width; column++) {
                    x[start + column] = (float) ((acrossX[column] + upX + m[2]) / reduction - 0.5);
                    y[start + column] = (float) ((acrossY[column] + upY + m[5]) / reduction - 0.5);
                }
            }
        }

        private void fillThroughLens(int top, int count, float[] x, float[] y) {
            double[] m = map.matrix();
            PageMap.Lens lens = map.lens();
            double bend = lens.bend() / (lens.radiusPx() * lens.radiusPx());
            for (int row = 0; row < count; row++) {
                double yMm = heightMm - (top + row + 0.5) / pixelsPerMm;
                for (int column = 0; column < width; column++) {
                    double xMm = (column + 0.5) / pixelsPerMm;
                    double w = m[6] * xMm + m[7] * yMm + m[8];
                    double dx = (m[0] * xMm + m[1] * yMm + m[2]) / w - lens.centreX();
                    double dy = (m[3] * xMm + m[4] * yMm + m[5]) / w - lens.centreY();
                    double factor = 1 + bend * (dx * dx + dy * dy);
                    x[row * width + column] = (float) ((lens.centreX() + dx * factor) / reduction - 0.5);
                    y[row * width + column] = (float) ((lens.centreY() + dy * factor) / reduction - 0.5);
                }
            }
        }
    }
}
