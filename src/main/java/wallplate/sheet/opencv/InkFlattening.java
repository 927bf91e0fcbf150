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
 * {@code (background - grey) / background}.
 */
public final class InkFlattening {

    private static final double BACKGROUND_PIXELS_PER_MM = 2;
    private static final double CLOSING = 4.5;
    private static final double BLUR = 1.5;

    private InkFlattening() {}

    /** The page's ink, 0 on bare paper and outside the paper, to 255. */
    public static InkImage flatten(GreyPage page, PaperMask paper) {
        byte[] ink = new byte[page.widthPx() * page.heightPx()];
        try (MatScope scope = new MatScope()) {
            Mat grey = scope.keep(new Mat(page.heightPx(), page.widthPx(), CvType.CV_8UC1));
            grey.put(0, 0, page.grey());
            Mat background = background(grey, page, paper, scope);
            Mat darker = scope.matrix();
            Core.subtract(background, grey, darker);
            Mat share = scope.matrix();
            Core.divide(darker, background, share, 255);
            share.get(0, 0, ink);
            paper.clear(ink, page.widthPx(), page.heightPx(), page.pixelsPerMm());
        }
        return new InkImage(page.widthPx(), page.heightPx(), page.pixelsPerMm(), ink);
    }

    private static Mat background(Mat grey, GreyPage page, PaperMask paper, MatScope scope) {
        Mat small = scope.matrix();
        double reduction = BACKGROUND_PIXELS_PER_MM / page.pixelsPerMm();
        Size size = new Size(Math.ceil(page.widthPx() * reduction), Math.ceil(page.heightPx() * reduction));
        Imgproc.resize(grey, small, size, 0, 0, Imgproc.INTER_AREA);
        Mat mask = scope.keep(new Mat(size, CvType.CV_8UC1));
        mask.put(0, 0, paper.bytes(small.cols(), small.rows(), small.cols() / page.widthMm()));
        Mat outside = scope.matrix();
        Core.bitwise_not(mask, outside);
        close(small, outside, scope);
        Mat smooth = smooth(small, mask, scope);
        Mat background = scope.matrix();
        Imgproc.resize(smooth, background, grey.size(), 0, 0, Imgproc.INTER_LINEAR);
        return background;
    }

    /** Closes up everything dark that is narrow; what is outside the paper neither fills nor eats. */
    private static void close(Mat small, Mat outside, MatScope scope) {
        int diameter = 2 * (int) Math.round(CLOSING * BACKGROUND_PIXELS_PER_MM / 2) + 1;
        Mat disc = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
        small.setTo(new Scalar(0), outside);
        Imgproc.dilate(small, small, disc);
        small.setTo(new Scalar(255), outside);
        Imgproc.erode(small, small, disc);
    }

    /** The mean over the paper nearby, weighted by a Gaussian; 255 where there is no paper. */
    private static Mat smooth(Mat small, Mat mask, MatScope scope) {
        Size automatic = new Size(0, 0);
        double sigma = BLUR * BACKGROUND_PIXELS_PER_MM;
        Mat weight = scope.matrix();
        mask.convertTo(weight, CvType.CV_32F, 1.0 / 255);
        Mat grey = scope.matrix();
        small.convertTo(grey, CvType.CV_32F);
        Core.multiply(grey, weight, grey);
        Imgproc.GaussianBlur(grey, grey, automatic, sigma);
        Imgproc.GaussianBlur(weight, weight, automatic, sigma);
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
