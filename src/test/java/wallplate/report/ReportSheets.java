package wallplate.report;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.marking.Asked;
import wallplate.marking.Guideline;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.sheet.Calibration;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.ExpectedDrawing;

/** Small assessed sheets for the tests of files and reports. */
final class ReportSheets {

    private ReportSheets() {}

    static ExpectedDrawing asked() {
        return Asked.asked()
                .angle("roof.pitch", 26)
                .yes("wall-plate.crossed")
                .length("gutter.width", 125)
                .length("brander.spacing", 400)
                .count("support.count", 3)
                .word("drawing.eaves", "left")
                .drawing();
    }

    static AssessedSheet.Read read(String scan, int page) {
        ExpectedDrawing expected = asked();
        MeasuredSheet measured = new MeasuredSheet(
                List.of(
                        Measurement.of(
                                "roof.pitch",
                                new Finding.Quantity(26.20049, 0.1),
                                new Segment(new Point(10, 10), new Point(50, 30))),
                        Measurement.of("wall-plate.crossed", new Finding.YesNo(true)),
                        Measurement.of("gutter.width", new Finding.Absent()),
                        Measurement.uncertain("brander.spacing", "The branders lie under a fold."),
                        Measurement.of("support.count", new Finding.Count(3)),
                        Measurement.of("drawing.eaves", new Finding.Word("right"))),
                Map.of(),
                Optional.empty());
        MarkedSheet marked = new Marker().mark(Guideline.defaultFor(expected), expected, measured);
        return new AssessedSheet.Read(scan, page, expected, levelPage(), measured, marked);
    }

    static AssessedSheet.Unreadable unreadable(String scan, String reason) {
        return new AssessedSheet.Unreadable(scan, 1, asked(), reason);
    }

    /** A bare page of 100 mm by 50 mm whose scan has ten pixels to the millimetre and its origin at the upper left. */
    static LevelPage levelPage() {
        return new LevelPage(
                new InkImage(200, 100, 2, new byte[200 * 100]),
                new Flip(10, 500),
                10,
                1.3712,
                false,
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, 0.2, 0.35),
                Optional.empty(),
                List.of("The bar is faint."));
    }

    private record Flip(double scale, double height) implements PlaneMap {
        @Override
        public Point apply(Point point) {
            return new Point(point.x() * scale, height - point.y() * scale);
        }

        @Override
        public PlaneMap inverse() {
            throw new UnsupportedOperationException("not needed here");
        }
    }
}
