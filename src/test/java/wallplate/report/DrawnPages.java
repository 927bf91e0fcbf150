package wallplate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.marking.Guideline;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.EavesSide;

/** Level pages with the model answer drawn on them as a plotter would, for the tests of reports. */
public final class DrawnPages {

    private static final Point HEEL_ON_LEFT = new Point(80, 95);
    private static final double PIXELS_PER_MM = 11.81;

    private DrawnPages() {}

    /** A sheet on which everything is drawn as asked but some keys, and marked. */
    public static AssessedSheet.Read sheet(String scan, ExpectedDrawing expected, Map<String, Finding> otherwise) {
        Map<String, List<Segment>> parts = new TreeMap<>();
        List<Segment> lines = new ArrayList<>();
        for (DrawnLine line : expected.lines()) {
            Segment onPage = onPage(expected, line.segment());
            lines.add(onPage);
            parts.computeIfAbsent(line.part() + "." + line.edge(), edge -> new ArrayList<>())
                    .add(onPage);
        }
        List<Measurement> measurements = expected.values().stream()
                .map(value -> Measurement.of(value.key(), otherwise.getOrDefault(value.key(), asAsked(value))))
                .toList();
        MeasuredSheet measured = new MeasuredSheet(measurements, parts, Optional.of(heel(expected)));
        MarkedSheet marked = new Marker().mark(Guideline.defaultFor(expected), expected, measured);
        return new AssessedSheet.Read(scan, 1, expected, page(expected, lines), measured, marked);
    }

    private static Finding asAsked(Expected value) {
        if (value instanceof Expected.Length length) {
            return new Finding.Quantity(length.exactMm(), 0.05);
        }
        if (value instanceof Expected.Angle angle) {
            return new Finding.Quantity(angle.degrees(), 0.05);
        }
        if (value instanceof Expected.Count count) {
            return new Finding.Count(count.number());
        }
        return value instanceof Expected.Word word
                ? new Finding.Word(word.word())
                : new Finding.YesNo(((Expected.YesNo) value).yes());
    }

    private static Point heel(ExpectedDrawing expected) {
        double width = expected.task().sheet().widthMm();
        return isRight(expected) ? new Point(width - HEEL_ON_LEFT.x(), HEEL_ON_LEFT.y()) : HEEL_ON_LEFT;
    }

    private static boolean isRight(ExpectedDrawing expected) {
        return expected.task().eaves() == EavesSide.RIGHT;
    }

    private static Segment onPage(ExpectedDrawing expected, Segment line) {
        Segment turned = isRight(expected) ? line.mirrored() : line;
        Point heel = heel(expected);
        return Segment.between(
                turned.start().x() + heel.x(),
                turned.start().y() + heel.y(),
                turned.end().x() + heel.x(),
                turned.end().y() + heel.y());
    }

    private static LevelPage page(ExpectedDrawing expected, List<Segment> lines) {
        int width = (int) Math.round(expected.task().sheet().widthMm() * PIXELS_PER_MM);
        int height = (int) Math.round(expected.task().sheet().heightMm() * PIXELS_PER_MM);
        byte[] ink = new byte[width * height];
        for (Segment line : lines) {
            stroke(ink, width, height, line);
        }
        return new LevelPage(
                new InkImage(width, height, PIXELS_PER_MM, ink),
                new TopDown(height),
                PIXELS_PER_MM,
                0,
                false,
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, 0.2, 0.3),
                Optional.empty(),
                List.of());
    }

    /** Four pixels wide, which is a third of a millimetre. */
    private static void stroke(byte[] ink, int width, int height, Segment line) {
        int steps = (int) Math.ceil(line.length() * PIXELS_PER_MM) + 1;
        for (int step = 0; step <= steps; step++) {
            Point place = line.at((double) step / steps);
            int column = (int) (place.x() * PIXELS_PER_MM);
            int row = height - 1 - (int) (place.y() * PIXELS_PER_MM);
            for (int across = -2; across < 2; across++) {
                for (int down = -2; down < 2; down++) {
                    int x = column + across;
                    int y = row + down;
                    if (x >= 0 && y >= 0 && x < width && y < height) {
                        ink[y * width + x] = (byte) 140;
                    }
                }
            }
        }
    }

    private record TopDown(int height) implements PlaneMap {
        @Override
        public Point apply(Point point) {
            return new Point(point.x() * PIXELS_PER_MM, height - point.y() * PIXELS_PER_MM);
        }

        @Override
        public PlaneMap inverse() {
            throw new UnsupportedOperationException("no report asks for it");
        }
    }
}
