package wallplate.web.sets;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import wallplate.geometry.Segment;
import wallplate.records.MarkPlace;

/**
 * The place of a sheet where one criterion was measured, cut out of the page picture.
 *
 * @param leftPx of the cut, in pixels of the page picture, as are the next three
 * @param viewBox the cut in millimetres, as SVG has it
 * @param strokes the strokes measured as one SVG path, in millimetres from the cut's upper left corner, y down
 */
record ClosePlace(int leftPx, int topPx, int widthPx, int heightPx, String viewBox, String strokes) {

    private static final double MARGIN_MM = 9;
    private static final double LEAST_WIDTH_MM = 32;
    /** Of strokes that are longer than this, the middle is shown: what matters is how far apart they are. */
    private static final double MOST_WIDTH_MM = 64;

    private static final double SHAPE = 4.0 / 3;

    /** The cut as the address of its picture names it. */
    String query() {
        return "left=%d&top=%d&width=%d&height=%d".formatted(leftPx, topPx, widthPx, heightPx);
    }

    static ClosePlace of(MarkPlace place) {
        List<Segment> evidence = place.evidence();
        double left = xs(evidence).min().orElse(0);
        double right = xs(evidence).max().orElse(0);
        double low = ys(evidence).min().orElse(0);
        double high = ys(evidence).max().orElse(0);
        double width = Math.max(LEAST_WIDTH_MM, Math.max(right - left + 2 * MARGIN_MM, (high - low + 2 * MARGIN_MM) * SHAPE));
        width = Math.min(Math.min(width, MOST_WIDTH_MM), Math.min(place.pageWidthMm(), place.pageHeightMm() * SHAPE));
        double height = width / SHAPE;
        double x = within((left + right - width) / 2, place.pageWidthMm() - width);
        double y = within(place.pageHeightMm() - (low + high + height) / 2, place.pageHeightMm() - height);
        double scale = place.pixelsPerMm();
        return new ClosePlace(
                (int) Math.round(x * scale),
                (int) Math.round(y * scale),
                (int) Math.round(width * scale),
                (int) Math.round(height * scale),
                "0 0 " + hundredth(width) + " " + hundredth(height),
                evidence.stream().map(segment -> stroke(segment, x, y, place.pageHeightMm())).collect(Collectors.joining()));
    }

    private static double within(double value, double most) {
        return Math.max(0, Math.min(value, most));
    }

    private static String stroke(Segment segment, double x, double y, double pageHeight) {
        return "M" + hundredth(segment.start().x() - x)
                + " " + hundredth(pageHeight - segment.start().y() - y)
                + "L" + hundredth(segment.end().x() - x)
                + " " + hundredth(pageHeight - segment.end().y() - y);
    }

    private static DoubleStream xs(List<Segment> segments) {
        return segments.stream().flatMapToDouble(one -> DoubleStream.of(one.start().x(), one.end().x()));
    }

    private static DoubleStream ys(List<Segment> segments) {
        return segments.stream().flatMapToDouble(one -> DoubleStream.of(one.start().y(), one.end().y()));
    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
