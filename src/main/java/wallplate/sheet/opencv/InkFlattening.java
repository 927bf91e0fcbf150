package wallplate.sheet.opencv;

import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import wallplate.sheet.InkImage;
import wallplate.sheet.page.GreyPage;
import wallplate.sheet.page.PaperMask;

/**
 * Takes the light and the paper's tone out of a grey page, so that what is left is ink.
 *
 * <p>The background is what remains when everything narrower than a few millimetres is closed up; ink is
 * {@code (background - grey) / background}. Graphite that shines brighter than the paper between dark rims is ink too.
 */
public final class InkFlattening {

    private static final double BACKGROUND_PIXELS_PER_MM = 2;
    private static final double CLOSING = 4.5;
    private static final double BLUR = 1.5;
    /** Darker than this share of the page's usual grey is no paper, where it reaches in from the border. */
    private static final double SURROUND = 0.6;
    private static final double SURROUND_INSET = 1.0;
    /** Shining graphite is brighter than the paper by at least this share; the paper's grain is not. */
    private static final double LEAST_SHINE = 0.05;
    /** The bright part of a broad pencil line between its rims; strokes further apart are two. */
    private static final double WIDEST_SHINE = 0.5;
    /** Ink, from 0 to 255, by which the rims are darker than what lies between them. */
    private static final double LEAST_RIM = 40;
    /** So much of the stroke about a place, in millimetres, and so many square millimetres of it must shine: grain does not. */
    private static final double SHINING_STRETCH = 1;

    private static final double LEAST_SHINING_AREA = 0.08;
    /** Along so much of a stroke, in millimetres, the lamp's mirror image fades. */
    private static final double SHINE_BEGINS = 6;
    private static final int FLOODED = 128;
    private static final Size AUTOMATIC = new Size(0, 0);

    private final GreyPage page;
    private final PaperMask paper;
    private final MatScope scope;

    private InkFlattening(GreyPage page, PaperMask paper, MatScope scope) {
        this.page = page;
        this.paper = paper;
        this.scope = scope;
    }

    /**
     * The page's ink, 0 on bare paper and outside the paper, to 255.
     *
     * @param graphiteShines whether a camera may have seen graphite mirror the light
     */
    public static InkImage flatten(GreyPage page, PaperMask paper, boolean graphiteShines) {
        try (MatScope scope = new MatScope()) {
            return new InkFlattening(page, paper, scope).flatten(graphiteShines);
        }
    }

    private InkImage flatten(boolean graphiteShines) {
        Mat grey = scope.keep(new Mat(page.heightPx(), page.widthPx(), CvType.CV_8UC1));
        grey.put(0, 0, page.grey());
        Mat small = scope.matrix();
        double reduction = BACKGROUND_PIXELS_PER_MM / page.pixelsPerMm();
        Size size = new Size(Math.ceil(page.widthPx() * reduction), Math.ceil(page.heightPx() * reduction));
        Imgproc.resize(grey, small, size, 0, 0, Imgproc.INTER_AREA);
        Mat outside = outside(small);
        close(small, outside, CLOSING);
        Mat smooth = smooth(small, outside);
        Mat background = scope.matrix();
        Imgproc.resize(smooth, background, grey.size(), 0, 0, Imgproc.INTER_LINEAR);
        Mat darker = scope.matrix();
        Core.subtract(background, grey, darker);
        Mat share = scope.matrix();
        Core.divide(darker, background, share, 255);
        if (graphiteShines) {
            fillShine(grey, background, share);
        }
        return image(share, outside);
    }

    /** Gives a place that is brighter than the paper between two dark rims the ink of its rims. */
    private void fillShine(Mat grey, Mat background, Mat share) {
        Mat brighter = scope.matrix();
        Core.subtract(grey, background, brighter);
        Core.divide(brighter, background, brighter, 255);
        Mat shining = scope.matrix();
        Core.compare(brighter, new Scalar(255 * LEAST_SHINE), shining, Core.CMP_GT);
        int diameter = 2 * (int) Math.round(WIDEST_SHINE * page.pixelsPerMm() / 2) + 1;
        Mat width = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
        Mat filled = scope.matrix();
        Imgproc.morphologyEx(share, filled, Imgproc.MORPH_CLOSE, width);
        aboutShine(share, filled, shining);
        filled.copyTo(share, shining);
    }

    /**
     * Leaves in {@code shining} what lies between rims about the places where graphite shines along its stroke: before it is
     * brighter than the paper it is as bright, so that it seems to be two lines.
     */
    private void aboutShine(Mat share, Mat filled, Mat shining) {
        Mat between = scope.matrix();
        Core.subtract(filled, share, between);
        Core.compare(between, new Scalar(LEAST_RIM), between, Core.CMP_GT);
        Core.bitwise_and(between, shining, shining);
        keepCoherent(shining);
        if (Core.countNonZero(shining) > 0) {
            int reach = 2 * (int) Math.round(SHINE_BEGINS * page.pixelsPerMm()) + 1;
            Mat near = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(reach, reach)));
            Imgproc.dilate(shining, shining, near);
        }
    }

    /** Clears what shines here and there, as the paper's grain between two strokes does, and not along a stroke. */
    private void keepCoherent(Mat shining) {
        Mat shareShining = scope.matrix();
        int stretch = 2 * (int) Math.round(SHINING_STRETCH * page.pixelsPerMm() / 2) + 1;
        Imgproc.boxFilter(shining, shareShining, CvType.CV_32F, new Size(stretch, stretch));
        Mat isolated = scope.matrix();
        double least = 255 * LEAST_SHINING_AREA / (SHINING_STRETCH * SHINING_STRETCH);
        Core.compare(shareShining, new Scalar(least), isolated, Core.CMP_LT);
        shining.setTo(new Scalar(0), isolated);
    }

    private InkImage image(Mat share, Mat outside) {
        if (paper.darkSurround()) {
            Mat full = scope.matrix();
            Imgproc.resize(outside, full, share.size(), 0, 0, Imgproc.INTER_NEAREST);
            share.setTo(new Scalar(0), full);
        }
        byte[] ink = new byte[page.widthPx() * page.heightPx()];
        share.get(0, 0, ink);
        paper.clear(ink, page.widthPx(), page.heightPx(), page.pixelsPerMm());
        return new InkImage(page.widthPx(), page.heightPx(), page.pixelsPerMm(), ink);
    }

    /** Where the small page shows no paper, 255. */
    private Mat outside(Mat small) {
        Mat outside = scope.keep(new Mat(small.size(), CvType.CV_8UC1));
        outside.put(0, 0, paper.bytes(small.cols(), small.rows(), small.cols() / page.widthMm()));
        Core.bitwise_not(outside, outside);
        if (paper.darkSurround()) {
            Mat surround = surround(small, outside);
            Core.bitwise_or(outside, surround, outside);
        }
        return outside;
    }

    /** The dark that hangs together with the page's border, however narrow it is. */
    private Mat surround(Mat small, Mat outside) {
        Mat inside = scope.matrix();
        Core.bitwise_not(outside, inside);
        double usual = Core.mean(small, inside).val[0];
        Mat dark = scope.matrix();
        small.copyTo(dark);
        dark.setTo(new Scalar(0), outside);
        // With darkness all round, closing fills the strokes but not a dark border, and one flood finds all of it.
        int rim = (int) Math.ceil(CLOSING * BACKGROUND_PIXELS_PER_MM);
        Core.copyMakeBorder(dark, dark, rim, rim, rim, rim, Core.BORDER_CONSTANT, new Scalar(0));
        Imgproc.morphologyEx(dark, dark, Imgproc.MORPH_CLOSE, disc(CLOSING));
        Core.compare(dark, new Scalar(SURROUND * usual), dark, Core.CMP_LT);
        Mat flooded = scope.keep(Mat.zeros(dark.rows() + 2, dark.cols() + 2, CvType.CV_8UC1));
        Imgproc.floodFill(dark, flooded, new org.opencv.core.Point(0, 0), new Scalar(FLOODED));
        Core.compare(dark, new Scalar(FLOODED), dark, Core.CMP_EQ);
        Imgproc.dilate(dark, dark, disc(2 * SURROUND_INSET));
        return scope.keep(dark.submat(rim, rim + small.rows(), rim, rim + small.cols()));
    }

    private Mat disc(double millimetres) {
        int diameter = 2 * (int) Math.round(millimetres * BACKGROUND_PIXELS_PER_MM / 2) + 1;
        return scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
    }

    /** Closes up everything dark that is narrow; what is outside the paper neither fills nor eats. */
    private void close(Mat small, Mat outside, double millimetres) {
        Mat disc = disc(millimetres);
        small.setTo(new Scalar(0), outside);
        Imgproc.dilate(small, small, disc);
        small.setTo(new Scalar(255), outside);
        Imgproc.erode(small, small, disc);
    }

    /** The mean over the paper nearby, weighted by a Gaussian; 255 where there is no paper. */
    private Mat smooth(Mat small, Mat outside) {
        double sigma = BLUR * BACKGROUND_PIXELS_PER_MM;
        Mat inside = scope.matrix();
        Core.bitwise_not(outside, inside);
        Mat weight = scope.matrix();
        inside.convertTo(weight, CvType.CV_32F, 1.0 / 255);
        Mat grey = scope.matrix();
        small.convertTo(grey, CvType.CV_32F);
        Core.multiply(grey, weight, grey);
        Imgproc.GaussianBlur(grey, grey, AUTOMATIC, sigma);
        Imgproc.GaussianBlur(weight, weight, AUTOMATIC, sigma);
        Mat none = scope.matrix();
        Core.compare(weight, new Scalar(1e-3), none, Core.CMP_LT);
        grey.setTo(new Scalar(255), none);
        weight.setTo(new Scalar(1), none);
        Core.divide(grey, weight, grey);
        Mat smooth = scope.matrix();
        grey.convertTo(smooth, CvType.CV_8U);
        return smooth;
    }
}
