package wallplate.report.pdf;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.Verdict;
import wallplate.report.MeasuredParts;
import wallplate.report.Topic;

/**
 * The measured lines of one part, with the number and the line type that it has on the report.
 *
 * @param number from 1, in the order of the detail's own list
 * @param lines on the learner's level page
 * @param isRight whether nothing of the part is wrong
 */
record PartLines(String part, int number, List<Segment> lines, Pen pen, boolean isRight) {

    private static final List<Color> COLOURS =
            List.of(Ink.BLUE, new Color(0x0B6E63), new Color(0x6A3D9A), new Color(0x7A4A12));
    private static final List<List<Double>> DASHES =
            List.of(List.of(), List.of(3.0, 1.4), List.of(5.0, 1.2, 0.3, 1.2), List.of(0.2, 1.1), List.of(1.4, 0.9));
    private static final double WIDTH_MM = 0.45;

    PartLines {
        lines = List.copyOf(lines);
    }

    /** Every part of which something was measured, in the order of the detail's own list. */
    static List<PartLines> of(AssessedSheet.Read sheet) {
        List<PartLines> parts = new ArrayList<>();
        MeasuredParts.of(sheet.measured()).forEach((part, lines) -> {
            int index = parts.size();
            Pen pen = new Pen(WIDTH_MM, COLOURS.get(index % COLOURS.size()), DASHES.get(index % DASHES.size()));
            parts.add(new PartLines(part, index + 1, lines, pen, isRight(sheet, part)));
        });
        return parts;
    }

    private static boolean isRight(AssessedSheet.Read sheet, String part) {
        return sheet.marked().marks().stream()
                .filter(mark ->
                        mark.key().map(Topic::partOf).filter(part::equals).isPresent())
                .noneMatch(mark -> mark.verdict() == Verdict.NOT_MET);
    }
}
