package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import wallplate.geometry.Segment;

/**
 * The solver against sheets drawn by programs that are not this project's: the paper sizes that they aimed at, and
 * where the lines of sheets without slips lie.
 */
class TruthSheetsTest {

    /** Drawn to whole millimetres, spacings and all: half a millimetre each adds up along the slope. */
    private static final double FARTHEST_MM = 2.5;

    private static final Set<String> FREE = Set.of("brander", "hatch", "break", "fascia", "gutter");

    private static final Pattern LINE = Pattern.compile("([a-z-]+?)(\\d*)(?:\\.([a-z0-9]+))?");

    @Test
    void agreesWithEveryPaperSizeThatTheSheetsAimedAt() throws IOException {
        int checked = 0;
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            ExpectedDrawing drawing = Solver.solve(sheet.task());
            for (Map.Entry<String, JsonNode> size :
                    sheet.truth().get("expected").properties()) {
                double solved = number(drawing.value(size.getKey()).orElseThrow());
                assertThat(solved)
                        .as("%s %s", sheet.name(), size.getKey())
                        .isCloseTo(size.getValue().asDouble(), within());
                checked++;
            }
        }
        assertThat(checked).isGreaterThan(500);
    }

    @Test
    void asksForEveryKeyThatTheSheetsShow() throws IOException {
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            List<String> asked = Solver.solve(sheet.task()).values().stream()
                    .map(Expected::key)
                    .toList();
            List<String> shown =
                    sheet.truth().get("truth").propertyNames().stream().toList();
            assertThat(asked).as(sheet.name()).containsAll(shown);
        }
    }

    @Test
    void putsEveryLineWhereSheetsWithoutSlipsHaveIt() throws IOException {
        int checked = 0;
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            if (!sheet.truth().get("slips").isEmpty()) {
                continue;
            }
            ExpectedDrawing drawing = Solver.solve(sheet.task());
            for (Map.Entry<String, JsonNode> line : sheet.truth().get("lines").properties()) {
                Matcher name = LINE.matcher(line.getKey());
                assertThat(name.matches()).as(line.getKey()).isTrue();
                String edge = name.group(3) == null ? name.group(1) : name.group(3);
                if (FREE.contains(name.group(1)) || FREE.contains(edge)) {
                    continue;
                }
                int index = name.group(2).isEmpty() ? 0 : Integer.parseInt(name.group(2));
                Segment drawn = sheet.inDetailAxes(TruthSheets.segment(line.getValue()));
                DrawnLine expected = drawing.lines().stream()
                        .filter(candidate -> candidate.part().equals(name.group(1))
                                && candidate.index() == index
                                && candidate.edge().equals(edge))
                        .findFirst()
                        .orElseThrow(() -> new AssertionError(sheet.name() + " has no expected " + line.getKey()));
                double off = Math.abs(expected.segment().line().distanceTo(drawn.midpoint()));
                assertThat(off).as("%s %s", sheet.name(), line.getKey()).isLessThan(FARTHEST_MM);
                checked++;
            }
        }
        assertThat(checked).isGreaterThan(300);
    }

    private static double number(Expected value) {
        return value instanceof Expected.Angle angle ? angle.degrees() : ((Expected.Length) value).exactMm();
    }

    private static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.api.Assertions.within(1e-6);
    }
}
