package wallplate.sheet.opencv;

import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Point;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import wallplate.sheet.InkImage;
import wallplate.sheet.page.GreyPage;

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

    /** The page's ink, 0 on bare paper to 255. */
    public static InkImage flatten(GreyPage page) {
        byte[] ink = new byte[page.widthPx() * page.heightPx()];
        try (MatScope scope = new MatScope()) {
            Mat grey = scope.keep(new Mat(page.heightPx(), page.widthPx(), CvType.CV_8UC1));
            grey.put(0, 0, page.grey());
            Mat background = background(grey, page, scope);
            Mat darker = scope.matrix();
            Core.subtract(background, grey, darker);
            Mat share = scope.matrix();
            Core.divide(darker, background, share, 255);
            share.get(0, 0, ink);
        }
        return new InkImage(page.widthPx(), page.heightPx(), page.pixelsPerMm(), ink);
    }

    private static Mat background(Mat grey, GreyPage page, MatScope scope) {
        Mat small = scope.matrix();
        double reduction = BACKGROUND_PIXELS_PER_MM / page.pixelsPerMm();
        Size size = new Size(Math.ceil(page.widthPx() * reduction), Math.ceil(page.heightPx() * reduction));
        Imgproc.resize(grey, small, size, 0, 0, Imgproc.INTER_AREA);
        int diameter = 2 * (int) Math.round(CLOSING * BACKGROUND_PIXELS_PER_MM / 2) + 1;
        Mat disc = scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
        Imgproc.morphologyEx(small, small, Imgproc.MORPH_CLOSE, disc, new Point(-1, -1), 1, Core.BORDER_REPLICATE);
        Imgproc.GaussianBlur(small, small, new Size(0, 0), BLUR * BACKGROUND_PIXELS_PER_MM);
        Mat background = scope.matrix();
        Imgproc.resize(small, background, grey.size(), 0, 0, Imgproc.INTER_LINEAR);
        return background;
    }
}
