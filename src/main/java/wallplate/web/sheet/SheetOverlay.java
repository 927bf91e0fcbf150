package wallplate.web.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkEntry;
import wallplate.records.PageFacts;
import wallplate.report.MeasuredParts;

/**
 * What is drawn over the level scan: the parts that were found, numbered, and for each criterion the strokes that its
 * value was taken from. Places are millimetres from the picture's upper left corner, y down, as SVG has it.
 */
public record SheetOverlay(double widthMm, double heightMm, List<Part> parts, List<Evidence> evidence) {

    /** Told apart by line type and number, as a drawing does it. */
    private static final List<String> LINE_TYPES =
            List.of("none", "3 1", "1 1", "5 1 1 1", "5 1 1 1 1 1", "2 1.5");

    private static final double MIDDLE = 0.5;

    /** Where along a line a number may stand, the first wish first. */
    private static final List<Double> TRIED = List.of(MIDDLE, 0.3, 0.7, 0.15, 0.85);

    /** Numbers that are this far apart do not touch. */
    private static final double CLEAR_MM = 7;

    /** A straight piece. */
    public record Line(double x1, double y1, double x2, double y2) {

        /** The place at a fraction of the way, to a hundredth. */
        Place at(double fraction) {
            return new Place(hundredth(x1 + (x2 - x1) * fraction), hundredth(y1 + (y2 - y1) * fraction));
        }
    }

    public record Place(double x, double y) {}

    /**
     * A part's lines under one number.
     *
     * @param lineType the dashes of SVG
     * @param badge where the number stands
     */
    public record Part(String name, int number, String lineType, List<Line> lines, Place badge) {}

    /** The strokes of one criterion's value, and where the value is written beside them. */
    public record Evidence(MarkEntry mark, List<Line> lines, Place label) {}

    public static SheetOverlay of(KeptAssessment assessment, List<MarkEntry> marks) {
        Frame frame = new Frame(assessment.page());
        return new SheetOverlay(
                assessment.page().widthMm(),
                assessment.page().heightMm(),
                parts(assessment.measured(), frame),
                evidence(assessment.measured(), marks, frame));
    }

    private static List<Part> parts(MeasuredSheet measured, Frame frame) {
        List<Part> parts = new ArrayList<>();
        MeasuredParts.of(measured).forEach((name, segments) -> {
            int number = parts.size() + 1;
            List<Line> lines = segments.stream().map(frame::line).toList();
            String lineType = LINE_TYPES.get((number - 1) % LINE_TYPES.size());
            parts.add(new Part(name, number, lineType, lines, clearPlace(lines, parts)));
        });
        return parts;
    }

    /** A place on one of the lines that keeps clear of the numbers that are there already. */
    private static Place clearPlace(List<Line> lines, List<Part> before) {
        return lines.stream()
                .flatMap(line -> TRIED.stream().map(line::at))
                .max(Comparator.comparingDouble(place -> Math.min(CLEAR_MM, distance(place, before))))
                .orElseThrow();
    }

    private static double distance(Place place, List<Part> before) {
        return before.stream()
                .mapToDouble(part -> Math.hypot(place.x() - part.badge().x(), place.y() - part.badge().y()))
                .min()
                .orElse(CLEAR_MM);
    }

    private static List<Evidence> evidence(MeasuredSheet measured, List<MarkEntry> marks, Frame frame) {
        List<Evidence> evidence = new ArrayList<>();
        for (MarkEntry mark : marks) {
            mark.key().flatMap(measured::measurement)
                    .filter(measurement -> !measurement.evidence().isEmpty())
                    .map(measurement -> evidence(mark, measurement, frame))
                    .ifPresent(evidence::add);
        }
        return evidence;
    }

    private static Evidence evidence(MarkEntry mark, Measurement measurement, Frame frame) {
        List<Line> lines = measurement.evidence().stream().map(frame::line).toList();
        Place label = lines.get(0).at(MIDDLE);
        return new Evidence(mark, lines, frame.inside(label));
    }

    /** From page millimetres, y up, to the picture's, y down, to a hundredth. */
    private record Frame(PageFacts page) {

        private static final double MARGIN = 14;

        Line line(Segment segment) {
            Place start = place(segment.start());
            Place end = place(segment.end());
            return new Line(start.x(), start.y(), end.x(), end.y());
        }

        private Place place(Point point) {
            return new Place(hundredth(point.x()), hundredth(page.heightMm() - point.y()));
        }

        /** Moved so far from the edge that what is written there stays on the sheet. */
        Place inside(Place place) {
            return new Place(
                    Math.max(2, Math.min(page.widthMm() - 2 * MARGIN, place.x() + 2)),
                    Math.max(MARGIN / 2, Math.min(page.heightMm() - 2, place.y() - 2)));
        }

    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
