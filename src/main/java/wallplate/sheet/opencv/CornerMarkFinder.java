package wallplate.sheet.opencv;

import java.lang.ref.Reference;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Size;
import org.opencv.core.TermCriteria;
import org.opencv.imgproc.Imgproc;
import org.opencv.objdetect.ArucoDetector;
import org.opencv.objdetect.DetectorParameters;
import org.opencv.objdetect.Dictionary;
import org.opencv.objdetect.Objdetect;
import wallplate.geometry.Point;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.SeenMark;

/** Finds the printed corner marks in a picture: coarsely in a small copy, then each corner at full resolution. */
public final class CornerMarkFinder {

    private static final int LONGER_SIDE = 1900;
    private static final int CORNERS = 4;
    private static final int REFINE_STEPS = 40;
    private static final double REFINE_UNTIL = 0.01;

    private CornerMarkFinder() {}

    /** The marks of the sheets' dictionary, in the order of their numbers. */
    public static List<SeenMark> find(Picture picture) {
        try (MatScope scope = new MatScope()) {
            Mat full = PageWarp.matrix(picture, scope);
            double reduction = Math.max(1, Math.max(picture.widthPx(), picture.heightPx()) / (double) LONGER_SIDE);
            Mat small = full;
            if (reduction > 1) {
                small = scope.matrix();
                Size size = new Size(Math.round(full.cols() / reduction), Math.round(full.rows() / reduction));
                Imgproc.resize(full, small, size, 0, 0, Imgproc.INTER_AREA);
            }
            List<SeenMark> marks = new ArrayList<>();
            List<Mat> corners = new ArrayList<>();
            Mat numbers = scope.matrix();
            detect(small, corners, numbers);
            corners.forEach(scope::keep);
            for (int i = 0; i < corners.size(); i++) {
                int number = (int) numbers.get(i, 0)[0];
                marks.add(new SeenMark(number, refined(full, corners.get(i), small, scope)));
            }
            marks.sort(SeenMark.BY_NUMBER);
            return marks;
        }
    }

    private static void detect(Mat small, List<Mat> corners, Mat numbers) {
        Dictionary dictionary = Objdetect.getPredefinedDictionary(Objdetect.DICT_4X4_50);
        DetectorParameters parameters = new DetectorParameters();
        parameters.set_cornerRefinementMethod(Objdetect.CORNER_REFINE_SUBPIX);
        ArucoDetector detector = new ArucoDetector(dictionary, parameters);
        detector.detectMarkers(small, corners, numbers);
        // The native call knows only addresses: what they point to must not be collected while it runs.
        Reference.reachabilityFence(dictionary);
        Reference.reachabilityFence(parameters);
        Reference.reachabilityFence(detector);
    }

    private static List<Point> refined(Mat full, Mat corners, Mat small, MatScope scope) {
        double x = (double) full.cols() / small.cols();
        double y = (double) full.rows() / small.rows();
        org.opencv.core.Point[] places = new org.opencv.core.Point[CORNERS];
        for (int i = 0; i < CORNERS; i++) {
            double[] at = corners.get(0, i);
            places[i] = new org.opencv.core.Point((at[0] + 0.5) * x - 0.5, (at[1] + 0.5) * y - 0.5);
        }
        double side = Math.hypot(places[1].x - places[0].x, places[1].y - places[0].y);
        // A cell is a sixth of the side; the window stays within the outermost black cells.
        int half = (int) Math.max(2, Math.min(8, side / 12));
        MatOfPoint2f refined = scope.keep(new MatOfPoint2f(places));
        TermCriteria until = new TermCriteria(TermCriteria.EPS + TermCriteria.MAX_ITER, REFINE_STEPS, REFINE_UNTIL);
        Imgproc.cornerSubPix(full, refined, new Size(half, half), new Size(-1, -1), until);
        List<Point> points = new ArrayList<>();
        for (org.opencv.core.Point place : refined.toArray()) {
            points.add(new Point(place.x + 0.5, place.y + 0.5));
        }
        return points;
    }
}
