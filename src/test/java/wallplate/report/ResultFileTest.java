package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Guideline;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/** The result file, as the interchange page has it. */
class ResultFileTest {

    private static JsonNode written(AssessedSheet sheet) {
        return JsonMapper.builder().build().readTree(ResultFile.write(sheet));
    }

    @Test
    void startsWithWhatSheetItIs() {
        assertThat(ResultFile.write(ReportSheets.read("sheet-07.png", 1)))
                .startsWith(
                        """
                        {
                          "schema": 1,
                          "task": "boathouse-eaves",
                          "scan": "sheet-07.png",
                          "page": 1,
                          "status": "read",
                          "sheet": {
                            "pixelsPerMm": 10.0,
                            "rotationDegrees": 1.371,
                            "calibration": {
                              "source": "reference-bar",
                              "lengthMm": 100.0,
                              "uncertaintyPercent": 0.2,
                        """);
    }

    @Test
    void statesEveryKeyWithItsState() {
        JsonNode measurements = written(ReportSheets.read("a.png", 1)).path("measurements");
        assertThat(measurements.size()).isEqualTo(6);
        assertThat(measurements.get(0).toString())
                .isEqualTo("{\"key\":\"roof.pitch\",\"state\":\"measured\",\"value\":26.2,\"unit\":\"deg\","
                        + "\"uncertainty\":0.1,\"evidence\":[[100.0,400.0,500.0,200.0]]}");
        assertThat(measurements.get(1).toString())
                .isEqualTo("{\"key\":\"wall-plate.crossed\",\"state\":\"measured\",\"value\":true}");
        assertThat(measurements.get(2).toString()).isEqualTo("{\"key\":\"gutter.width\",\"state\":\"absent\"}");
        assertThat(measurements.get(3).toString())
                .isEqualTo("{\"key\":\"brander.spacing\",\"state\":\"uncertain\",\"reason\":\"The branders lie under a"
                        + " fold.\"}");
        assertThat(measurements.get(4).toString()).contains("\"value\":3");
        assertThat(measurements.get(5).toString()).contains("\"value\":\"right\"");
    }

    @Test
    void statesTheLineQualityApartFromTheKeys() {
        AssessedSheet.Read read = ReportSheets.read("a.png", 1);
        List<Measurement> measurements = new ArrayList<>(read.measured().measurements());
        measurements.add(Measurement.of("line-quality.outline-breadth", new Finding.Quantity(0.52, 0.05)));
        measurements.add(Measurement.of("line-quality.construction-darkness", new Finding.Quantity(21, 3)));
        measurements.add(Measurement.of("line-quality.poor-corners", new Finding.Count(2)));
        MeasuredSheet measured = new MeasuredSheet(measurements, Map.of(), Optional.empty());

        JsonNode file = written(new AssessedSheet.Read(
                read.scan(), read.page(), read.expected(), read.levelPage(), measured, read.marked()));

        assertThat(file.path("measurements").size()).isEqualTo(6);
        JsonNode written = file.path("lineQuality");
        assertThat(written.size()).isEqualTo(3);
        assertThat(written.get(0).toString())
                .isEqualTo("{\"key\":\"line-quality.outline-breadth\",\"state\":\"measured\",\"value\":0.52,\"unit\":\"mm\","
                        + "\"uncertainty\":0.05}");
        assertThat(written.get(1).path("unit").asString()).isEqualTo("%");
        assertThat(written.get(2).path("value").asInt()).isEqualTo(2);
    }

    @Test
    void statesEachMarkWithItsVerdict() {
        JsonNode marks = written(ReportSheets.read("a.png", 1)).path("marks");
        JsonNode pitch = marks.get(0);
        assertThat(pitch.path("criterion").asString()).isEqualTo("roof-pitch");
        assertThat(pitch.path("key").asString()).isEqualTo("roof.pitch");
        assertThat(pitch.path("verdict").asString()).isEqualTo("met");
        assertThat(pitch.path("awarded").toString()).isEqualTo("1");
        assertThat(pitch.path("available").toString()).isEqualTo("1");
        assertThat(pitch.path("expected").toString()).isEqualTo("26.0");
        assertThat(pitch.path("measured").toString()).isEqualTo("26.2");
        assertThat(pitch.path("tolerance").toString()).isEqualTo("1.0");
        assertThat(marks.get(3).path("verdict").asString()).isEqualTo("undecided");
        assertThat(marks.get(5).path("slips").toString()).isEqualTo("[\"mirrored\"]");
    }

    @Test
    void addsUp() {
        // Met: pitch, crossing, count. Not met: gutter, side. Left to the teacher: brander spacing.
        assertThat(written(ReportSheets.read("a.png", 1)).path("total").toString())
                .isEqualTo("{\"awarded\":3,\"available\":6,\"undecided\":1}");
    }

    @Test
    void saysWhyASheetCouldNotBeRead() {
        JsonNode root = written(ReportSheets.unreadable("b.png", "The page is blank."));
        assertThat(root.path("status").asString()).isEqualTo("unreadable");
        assertThat(root.path("reason").asString()).isEqualTo("The page is blank.");
        assertThat(root.has("marks")).isFalse();
    }

    @Test
    void writesTheSameBytesInEveryLocale() {
        Locale before = Locale.getDefault();
        String english = ResultFile.write(ReportSheets.read("a.png", 1));
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(ResultFile.write(ReportSheets.read("a.png", 1))).isEqualTo(english);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void givesTheSameMarksWhenMarkedAgainFromTheFile() {
        AssessedSheet.Read sheet = ReportSheets.read("a.png", 1);
        StoredResult stored = ResultFileReader.read(ResultFile.write(sheet));
        MeasuredSheet measured = stored.measured().orElseThrow();
        MarkedSheet again = new Marker().mark(Guideline.defaultFor(sheet.expected()), sheet.expected(), measured);
        assertThat(again.guideline()).isEqualTo(stored.guideline().orElseThrow());
        assertThat(again.awarded()).isEqualTo(sheet.marked().awarded());
        assertThat(again.marks())
                .extracting("verdict", "feedback", "slips")
                .isEqualTo(sheet.marked().marks().stream()
                        .map(mark -> org.assertj.core.groups.Tuple.tuple(mark.verdict(), mark.feedback(), mark.slips()))
                        .toList());
    }

    @Test
    void refusesToReadWhatIsNoResultFile() {
        assertThatThrownBy(() -> ResultFileReader.read("{\"schema\": 9}")).hasMessageContaining("not of 9");
        assertThatThrownBy(() -> ResultFileReader.read("pitch: 26")).hasMessageContaining("not JSON");
    }
}
