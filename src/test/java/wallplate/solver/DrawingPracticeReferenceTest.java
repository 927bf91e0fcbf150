package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.solver.parts.Hatching;
import wallplate.solver.parts.Working;
import wallplate.task.DrawingTask;
import wallplate.task.PaperSize;
import wallplate.task.Scale;
import wallplate.task.Tasks;

/** Scaled sizes, spacings, sheets and lines against standards, makers' data and the practice of the drawing class. */
class DrawingPracticeReferenceTest {

    @ParameterizedTest(name = "{0} mm at 1:20 is drawn {1}")
    @CsvSource({"114, 6", "38, 2", "75, 4", "50, 3", "30, 2", "150, 8", "460, 23", "1060, 53", "240, 12", "300, 15"})
    void roundsToWholeMillimetresAsSchoolsDo(double real, double drawn) {
        // common practice, no source
        assertThat(Working.length("a", real, new Scale(20)).drawnMm()).isEqualTo(drawn);
    }

    @Test
    void convertsLengthsFromThePlan() {
        // common practice, no source: 104 mm on a 1:50 plan is 5200 mm, 260 mm at 1:20, a quarter of it 65 mm
        PlanLength span = new PlanLength(104, new Scale(50), new Scale(20));
        assertThat(span.realMm()).isEqualTo(5200);
        assertThat(span.onDrawingMm()).isEqualTo(260);
        assertThat(span.onDrawingMm() / 4).isEqualTo(65);
        assertThat(span.working()).isEqualTo("104 x 50 = 5200 mm; 5200 / 20 = 260 mm");
        // an overhang of 5 mm on that plan is 12.5 mm at 1:20
        assertThat(new PlanLength(5, new Scale(50), new Scale(20)).onDrawingMm())
                .isEqualTo(12.5);
    }

    @Test
    void dividesASpanIntoFourAsThePostsDo() {
        // common practice, no source: a quarter of a span of 5200 mm at 1:20 is 65 mm
        DrawingTask task = Tasks.boathouse("span: 6400", "span: 5200");
        Expected.Length position =
                (Expected.Length) Solver.solve(task).value("post.position").orElseThrow();
        assertThat(position.exactMm()).isEqualTo(65);
        assertThat(position.working()).isEqualTo("5200 / 4 = 1300 mm; 1300 / 20 = 65 mm");
    }

    @Test
    void writesTheWorkingThatLearnersWrite() {
        assertThat(Working.length("a", 900, new Scale(20)).working()).isEqualTo("900 / 20 = 45 mm");
        assertThat(Working.length("a", 125, new Scale(20)).working()).isEqualTo("125 / 20 = 6.25 mm, drawn 6 mm");
        assertThat(Working.length("a", 100, new Scale(30)).working()).isEqualTo("100 / 30 ≈ 3.33 mm, drawn 3 mm");
        assertThat(Working.length("a", 6, new Scale(20)).working()).isEqualTo("6 / 20 = 0.3 mm");
    }

    @Test
    void meansByAScaleWhatTheStandardMeans() {
        // IS 962:1989 (slides): 1:100 shows 1 m as 10 mm
        assertThat(new Scale(100).onPaper(1000)).isEqualTo(10);
    }

    @ParameterizedTest(name = "{4}")
    @CsvSource({
        "4325, 320, 14, 309, 'SA Roofing manual, step 5: 4.325 m, at most 320 mm: 14 spaces of 309 mm'",
        "3200, 260, 13, 246.15, 'slate gauge example: 3.2 m at most 260 mm: 13 of 246.15 mm'",
        "204, 13, 16, 12.75, 'slating courses: 204 in at most 13 in: 16 courses'",
        "3000, 300, 10, 300, 'tile gauge: 3000 at 300 is 10 exactly, no extra'",
    })
    void dividesIntoTheFewestEqualSpaces(double length, double widest, int spaces, double spacing, String source) {
        EqualSpacing equal = EqualSpacing.ofAtMost(length, widest);
        assertThat(equal.spaces()).as(source).isEqualTo(spaces);
        assertThat(equal.spacing()).as(source).isCloseTo(spacing, within(0.5));
        assertThat(equal.spacing()).isLessThanOrEqualTo(widest);
        // so many spaces need one batten more: arithmetic, no source needed
        assertThat(equal.members()).isEqualTo(spaces + 1);
    }

    @ParameterizedTest(name = "battens every {0} mm")
    @CsvSource({"320, 3.13, 100", "345, 2.9, 75"})
    void findsTheBattensForASquareMetreOfTiles(int spacing, double metres, int lap) {
        // Marley Roofing SA, Double Roman data sheet: tile 420 mm long, centres 420 less the lap, metres of batten per
        // m2
        assertThat(420 - lap).isEqualTo(spacing);
        DrawingTask task = Tasks.boathouse("spacing: 900", "spacing: " + spacing);
        double solved = Solver.derived(task).stream()
                .filter(value -> value.id().equals("support.metres-per-square-metre"))
                .findFirst()
                .orElseThrow()
                .value();
        assertThat(solved).isCloseTo(metres, within(0.01));
        // tiles per square metre, cover width 301 mm: 10.38 and 9.63
        assertThat(solved / 0.301).isCloseTo(spacing == 320 ? 10.38 : 9.63, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"A0, 841, 1189", "A1, 594, 841", "A2, 420, 594", "A3, 297, 420", "A4, 210, 297"})
    void knowsTheTrimmedSheets(PaperSize size, double shortSide, double longSide) {
        // ISO 216, A series (also BS 3429, IS 962 table 1)
        assertThat(size.shortSideMm()).isEqualTo(shortSide);
        assertThat(size.longSideMm()).isEqualTo(longSide);
        assertThat(size.longSideMm() / size.shortSideMm()).isCloseTo(Math.sqrt(2), within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"A4, portrait, 180", "A3, landscape, 390", "A2, landscape, 564"})
    void leavesTheDrawingSpaceInsideTheFrame(String size, String orientation, int width) {
        // IS 962:1989 table 2; A3 and A2 landscape also the frames of the FreeCAD TechDraw ISO 7200 templates
        String yaml = Tasks.BOATHOUSE
                .replace("size: A4, orientation: landscape", "size: " + size + ", orientation: " + orientation)
                .replace("\"1:20\"", "\"1:2\"");
        assertThat(BriefCheck.check(Tasks.accepted(yaml)))
                .filteredOn(advice -> advice.key().equals("sheet.size"))
                .singleElement()
                .satisfies(advice -> assertThat(advice.message()).contains("leaves " + width + " x "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:2", "1:5", "1:10", "1:20", "1:50", "1:100", "1:200", "1:500", "1:1000"})
    void recommendsTheScalesOfTheStandard(String scale) {
        // ISO 5455:1979, clause 5.1, reductions (from memory)
        assertThat(scaleAdvice(scale)).noneMatch(advice -> advice.source().contains("ISO 5455"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:25", "1:2.5", "1:30", "1:40", "1:15"})
    void doesNotRecommendOtherScales(String scale) {
        // negative control: not in ISO 5455 (from memory), though some rulers and plotters have them
        assertThat(scaleAdvice(scale)).anyMatch(advice -> advice.source().contains("ISO 5455"));
    }

    private static List<Advice> scaleAdvice(String scale) {
        return BriefCheck.check(Tasks.boathouse("\"1:20\"", "\"" + scale + "\"")).stream()
                .filter(advice -> advice.key().equals("scale"))
                .toList();
    }

    @Test
    void hatchesAtTheNavysAngleAndSpacing() {
        // NAVEDTRA 14276, p. 3-68: section lines at 45 degrees, 1/16 to 1/8 inch apart
        List<DrawnLine> hatching = Solver.solve(Tasks.boathouse()).lines().stream()
                .filter(line -> line.role() == LineRole.HATCH)
                .toList();
        assertThat(hatching).hasSizeGreaterThan(5).allSatisfy(line -> assertThat(
                        line.segment().inclinationDegrees())
                .isCloseTo(45, within(1e-9)));
        assertThat(Hatching.WIDE).isBetween(25.4 / 16, 25.4 / 8);
        assertThat(Hatching.NARROW).isBetween(25.4 / 16, 25.4 / 8);
        // ISO 128:1982: never closer than 0.7 mm
        assertThat(Hatching.NARROW).isGreaterThan(0.7);
    }

    @Test
    void acceptsTheTimberSizesOfTheTrade() {
        // SA quantity surveying cards (KON 121): tie beam 38 x 114, battens 38 x 50 at 340, brandering 38 x 50 at 400,
        // ceiling 6.4, fascia 38 x 228
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE
                .replace("tie-beam: {depth: 150}", "tie-beam: {depth: 114}")
                .replace("width: 50, depth: 75, spacing: 900", "width: 50, depth: 38, spacing: 340")
                .replace("fascia: {thickness: 25, depth: 225}", "fascia: {thickness: 38, depth: 228}")
                .replace("board: 12, brander: {width: 50, depth: 50", "board: 6.4, brander: {width: 38, depth: 50"));
        assertThat(Solver.solve(task).value("tie-beam.depth"))
                .hasValueSatisfying(
                        value -> assertThat(((Expected.Length) value).drawnMm()).isEqualTo(6));
    }
}
