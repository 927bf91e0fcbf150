package wallplate.report.pdf;

import java.awt.Color;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.Verdict;
import wallplate.measure.Measurement;
import wallplate.report.Topic;
import wallplate.solver.Expected;

/**
 * The measured lines of one part, with the number and the line type that it has on the report.
 *
 * @param number from 1, in the order of the detail's own list
 * @param lines on the learner's level page
 * @param isRight whether nothing of the part is wrong
 */
record PartLines(String part, int number, List<Segment> lines, Pen pen, boolean isRight) {

    private static final Set<String> FILLING = Set.of("hatch", "cross1", "cross2");
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
        Map<String, List<Segment>> byPart = new LinkedHashMap<>();
        for (Expected expected : sheet.expected().values()) {
            byPart.computeIfAbsent(Topic.partOf(expected.key()), part -> new ArrayList<>());
        }
        found(sheet).forEach((part, lines) -> byPart.computeIfAbsent(part, none -> new ArrayList<>())
                .addAll(lines));
        addEvidence(sheet, byPart);
        List<PartLines> parts = new ArrayList<>();
        byPart.forEach((part, lines) -> {
            if (!lines.isEmpty()) {
                int index = parts.size();
                Pen pen = new Pen(WIDTH_MM, COLOURS.get(index % COLOURS.size()), DASHES.get(index % DASHES.size()));
                parts.add(new PartLines(part, index + 1, lines, pen, isRight(sheet, part)));
            }
        });
        return parts;
    }

    private static Map<String, List<Segment>> found(AssessedSheet.Read sheet) {
        Map<String, List<Segment>> byPart = new TreeMap<>();
        new TreeMap<>(sheet.measured().parts()).forEach((partAndEdge, lines) -> {
            String edge = partAndEdge.substring(partAndEdge.lastIndexOf('.') + 1);
            if (!FILLING.contains(edge) && !partAndEdge.equals("break")) {
                String part = Topic.partOf(partAndEdge).replaceAll("\\d+$", "");
                byPart.computeIfAbsent(part, none -> new ArrayList<>()).addAll(lines);
            }
        });
        return byPart;
    }

    /** A part without lines of its own shows the strokes that its values were taken from. */
    private static void addEvidence(AssessedSheet.Read sheet, Map<String, List<Segment>> byPart) {
        Map<String, List<Segment>> evidence = new LinkedHashMap<>();
        for (Measurement measurement : sheet.measured().measurements()) {
            evidence.computeIfAbsent(Topic.partOf(measurement.key()), part -> new ArrayList<>())
                    .addAll(measurement.evidence());
        }
        byPart.forEach((part, lines) -> {
            if (lines.isEmpty() && !part.equals("roof") && !part.equals("drawing")) {
                lines.addAll(evidence.getOrDefault(part, List.of()).stream()
                        .distinct()
                        .toList());
            }
        });
    }

    private static boolean isRight(AssessedSheet.Read sheet, String part) {
        return sheet.marked().marks().stream()
                .filter(mark ->
                        mark.key().map(Topic::partOf).filter(part::equals).isPresent())
                .noneMatch(mark -> mark.verdict() == Verdict.NOT_MET);
    }
}
