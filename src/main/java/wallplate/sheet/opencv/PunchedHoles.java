package wallplate.sheet.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import wallplate.geometry.Point;
import wallplate.sheet.page.Disc;
import wallplate.sheet.page.GreyPage;

/** Finds filing holes: dark discs of about 6 mm near an edge of the page, as ISO 838 has them. */
public final class PunchedHoles {

    private static final double PIXELS_PER_MM = 2;
    private static final double STROKES = 3;
    private static final double LIGHT = 15;
    private static final double LEAST_DARKNESS = 20;
    private static final double SMALLEST = 3.5;
    private static final double LARGEST = 9;
    private static final double ROUNDNESS = 0.75;
    private static final double LEAST_FILLED = 0.62;
    /** ISO 838 puts the centres 12 mm from the edge; a crooked punch and a cropped scan add to it. */
    private static final double FROM_EDGE = 19;
    private static final double RIM = 1;
    private static final Size AUTOMATIC = new Size(0, 0);

    private PunchedHoles() {}

    /** The holes on a page. */
    public static List<Disc> find(GreyPage page) {
        try (MatScope scope = new MatScope()) {
            Mat grey = scope.keep(new Mat(page.heightPx(), page.widthPx(), CvType.CV_8UC1));
            grey.put(0, 0, page.grey());
            Mat small = scope.matrix();
            double reduction = PIXELS_PER_MM / page.pixelsPerMm();
            Imgproc.resize(grey, small, AUTOMATIC, reduction, reduction, Imgproc.INTER_AREA);
            Mat holes = scope.matrix();
            Imgproc.morphologyEx(small, holes, Imgproc.MORPH_CLOSE, disc(STROKES, scope));
            Mat light = scope.matrix();
            Imgproc.morphologyEx(holes, light, Imgproc.MORPH_CLOSE, disc(LIGHT, scope));
            Mat darker = scope.matrix();
            Core.subtract(light, holes, darker);
            Core.compare(darker, new Scalar(LEAST_DARKNESS), darker, Core.CMP_GT);
            return round(darker, page, scope);
        }
    }

    private static Mat disc(double millimetres, MatScope scope) {
        int diameter = 2 * (int) Math.round(millimetres * PIXELS_PER_MM / 2) + 1;
        return scope.keep(Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(diameter, diameter)));
    }

    private static List<Disc> round(Mat dark, GreyPage page, MatScope scope) {
        Mat labels = scope.matrix();
        Mat statistics = scope.matrix();
        Mat centres = scope.matrix();
        int count = Imgproc.connectedComponentsWithStats(dark, labels, statistics, centres);
        List<Disc> holes = new ArrayList<>();
        for (int i = 1; i < count; i++) {
            double width = statistics.get(i, Imgproc.CC_STAT_WIDTH)[0] / PIXELS_PER_MM;
            double height = statistics.get(i, Imgproc.CC_STAT_HEIGHT)[0] / PIXELS_PER_MM;
            double filled = statistics.get(i, Imgproc.CC_STAT_AREA)[0] / (width * height * PIXELS_PER_MM * PIXELS_PER_MM);
            Point centre = new Point(
                    (centres.get(i, 0)[0] + 0.5) / PIXELS_PER_MM,
                    page.heightMm() - (centres.get(i, 1)[0] + 0.5) / PIXELS_PER_MM);
            double larger = Math.max(width, height);
            boolean isRound = larger >= SMALLEST && larger <= LARGEST && Math.min(width, height) > ROUNDNESS * larger;
            if (isRound && filled > LEAST_FILLED && fromEdge(centre, page) < FROM_EDGE) {
                holes.add(new Disc(centre, larger / 2 + RIM));
            }
        }
        return holes;
    }

    private static double fromEdge(Point centre, GreyPage page) {
        double across = Math.min(centre.x(), page.widthMm() - centre.x());
        double up = Math.min(centre.y(), page.heightMm() - centre.y());
        return Math.min(across, up);
    }
}
