package wallplate.drafting.dxf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import wallplate.drafting.DraftingTasks;
import wallplate.drafting.ModelAnswer;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

/** The DXF file opened by a general-purpose reader, and held against the published group codes. */
class DxfFileTest {

    private static byte[] file(DrawingTask task) {
        return ModelAnswer.of(Solver.solve(task)).dxf();
    }

    @Test
    void aGeneralReaderFindsEveryLineOnTheLayerOfItsPart() throws IOException {
        for (String yaml : DraftingTasks.ALL) {
            DrawingTask task = Tasks.accepted(yaml);
            ReadDrawing drawing = ReadDrawing.of(file(task));
            for (var line : Solver.solve(task).lines()) {
                String layer = layer(line.part(), line.role().name());
                assertThat(drawing.entities("LINE", layer)).as(layer).isNotEmpty();
                assertThat(drawing.layers()).containsKey(layer);
            }
        }
    }

    private static String layer(String part, String role) {
        return part.toUpperCase(java.util.Locale.ROOT) + "-" + role.replace('_', '-');
    }

    @Test
    void wallMeasuresItsRealThickness() throws IOException {
        ReadDrawing drawing = ReadDrawing.of(file(Tasks.boathouse()));
        List<Double> faces = new ArrayList<>();
        for (Map<String, Object> line : drawing.entities("LINE", "WALL-CUT-OUTLINE")) {
            double start = ReadDrawing.place(line, 0, "x");
            double height = Math.abs(ReadDrawing.place(line, 0, "y") - ReadDrawing.place(line, 1, "y"));
            if (Math.abs(start - ReadDrawing.place(line, 1, "x")) < 1e-6 && height > 100) {
                faces.add(start);
            }
        }
        assertThat(faces).hasSize(2);
        assertThat(Math.abs(faces.get(0) - faces.get(1))).isCloseTo(230, within(0.01));
    }

    @Test
    void unitsAreMillimetres() throws IOException {
        // Published group codes: $INSUNITS 4 is millimetres, $MEASUREMENT 1 is metric
        ReadDrawing drawing = ReadDrawing.of(file(Tasks.boathouse()));
        assertThat(((Number) drawing.header("$INSUNITS")).intValue()).isEqualTo(4);
        assertThat(((Number) drawing.header("$MEASUREMENT")).intValue()).isEqualTo(1);
        assertThat(drawing.header("$ACADVER")).isEqualTo("AC1015");
    }

    @Test
    void textsAreFoundAsTexts() throws IOException {
        ReadDrawing drawing = ReadDrawing.of(file(Tasks.boathouse()));
        assertThat(drawing.entities("TEXT", "SUPPORT-LABEL"))
                .extracting(text -> text.get("text"))
                .contains("50 x 75 purlins");
        assertThat(drawing.entities("TEXT", "RAFTER-DIMENSION"))
                .extracting(text -> text.get("text"))
                .contains("26%%d", "150", "400");
    }

    @Test
    void fileIsPlainAsciiInPairsOfCodeAndValue() {
        byte[] bytes = file(Tasks.boathouse("of the boathouse", "of the boathouse at Łódź"));
        String[] lines = new String(bytes, StandardCharsets.US_ASCII).split("\n", -1);
        for (byte value : bytes) {
            assertThat(value == '\n' || value >= ' ').as("byte %d", value).isTrue();
        }
        assertThat((lines.length - 1) % 2).isZero();
        for (int line = 0; line + 1 < lines.length; line += 2) {
            assertThat(lines[line]).matches("\\d+");
        }
        assertThat(lines[lines.length - 2]).isEqualTo("EOF");
        assertThat(new String(bytes, StandardCharsets.US_ASCII)).contains("\\U+0141");
    }

    @Test
    void everyObjectHasAHandleOfItsOwn() {
        String[] lines = new String(file(Tasks.boathouse()), StandardCharsets.US_ASCII).split("\n");
        Set<String> handles = new HashSet<>();
        String seed = "";
        for (int line = 0; line + 1 < lines.length; line += 2) {
            boolean ofHeader = line >= 2 && lines[line - 1].equals("$HANDSEED");
            if (lines[line].equals("5") && ofHeader) {
                seed = lines[line + 1];
            } else if (lines[line].equals("5") || lines[line].equals("105")) {
                assertThat(handles.add(lines[line + 1])).as("handle %s is its own", lines[line + 1]).isTrue();
            }
        }
        long next = Long.parseLong(seed, 16);
        assertThat(handles).allMatch(handle -> Long.parseLong(handle, 16) < next);
    }

    @Test
    void sameDrawingGivesTheSameBytes() {
        assertThat(file(Tasks.boathouse())).isEqualTo(file(Tasks.boathouse()));
    }
}
