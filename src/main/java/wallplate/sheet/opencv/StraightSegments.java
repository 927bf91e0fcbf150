package wallplate.sheet.opencv;

import java.lang.ref.Reference;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.ximgproc.FastLineDetector;
import org.opencv.ximgproc.Ximgproc;
import wallplate.geometry.Segment;
import wallplate.sheet.page.GreyPage;

/** Finds straight pieces of edges on a coarse page: where to look for strokes, not yet where they are. */
public final class StraightSegments {

    private static final double SHORTEST = 3;
    private static final float EDGE_DISTANCE_PX = 1.6f;
    private static final double STRONG_EDGE = 60;
    private static final double WEAK_EDGE = 25;
    /** The detector clears a corner of this size, and fails on a page that has none. */
    private static final int LEAST_PX = 6;

    private StraightSegments() {}

    /** The segments in page millimetres, in the order in which they were found; a stroke shows one on either side. */
    public static List<Segment> find(GreyPage page) {
        if (page.widthPx() < LEAST_PX || page.heightPx() < LEAST_PX) {
            return List.of();
        }
        try (MatScope scope = new MatScope()) {
            Mat grey = scope.keep(new Mat(page.heightPx(), page.widthPx(), CvType.CV_8UC1));
            grey.put(0, 0, page.grey());
            Mat lines = scope.matrix();
            FastLineDetector detector = Ximgproc.createFastLineDetector(
                    (int) (SHORTEST * page.pixelsPerMm()), EDGE_DISTANCE_PX, WEAK_EDGE, STRONG_EDGE, 3, false);
            detector.detect(grey, lines);
            // The native call knows only its address: it must not be collected while it runs.
            Reference.reachabilityFence(detector);
            return segments(lines, page);
        }
    }

    private static List<Segment> segments(Mat lines, GreyPage page) {
        List<Segment> segments = new ArrayList<>();
        if (lines.empty()) {
            return segments;
        }
        float[] ends = new float[4 * lines.rows() * lines.cols()];
        lines.get(0, 0, ends);
        double scale = page.pixelsPerMm();
        for (int i = 0; i < ends.length; i += 4) {
            segments.add(Segment.between(
                    (ends[i] + 0.5) / scale,
                    page.heightMm() - (ends[i + 1] + 0.5) / scale,
                    (ends[i + 2] + 0.5) / scale,
                    page.heightMm() - (ends[i + 3] + 0.5) / scale));
        }
        return segments;
    }
}
