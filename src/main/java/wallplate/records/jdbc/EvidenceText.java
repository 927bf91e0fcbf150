package wallplate.records.jdbc;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import wallplate.geometry.Segment;

/** Strokes as text in a column: four numbers each, in millimetres of the page to a hundredth, parted by semicolons. */
final class EvidenceText {

    /** So many fit the column; a place is told from fewer. */
    private static final int MOST_STROKES = 100;

    private EvidenceText() {}

    static String write(List<Segment> strokes) {
        return strokes.stream()
                .limit(MOST_STROKES)
                .map(stroke -> String.format(
                        Locale.ROOT,
                        "%.2f %.2f %.2f %.2f",
                        stroke.start().x(),
                        stroke.start().y(),
                        stroke.end().x(),
                        stroke.end().y()))
                .collect(Collectors.joining(";"));
    }

    static List<Segment> read(String text) {
        return Arrays.stream(text.split(";")).map(EvidenceText::stroke).toList();
    }

    private static Segment stroke(String text) {
        String[] numbers = text.split(" ");
        return Segment.between(
                Double.parseDouble(numbers[0]),
                Double.parseDouble(numbers[1]),
                Double.parseDouble(numbers[2]),
                Double.parseDouble(numbers[3]));
    }
}
