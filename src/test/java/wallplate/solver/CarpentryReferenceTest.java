package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.task.DrawingTask;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;
import wallplate.task.Tasks;

/**
 * The solver's roof against worked examples and tables of published carpentry books and manuals.
 *
 * <p>Sources: H = F. T. Hodgson, ABC of the Steel Square and its Uses (Project Gutenberg 49273). N = W. Noyes,
 * Handwork in Wood (Project Gutenberg 20846). US Navy NAVEDTRA 14044. US Army subcourses EN0069A and EN5156. G = I. S.
 * Griffith, Carpentry. R = Rivington, Notes on Building Construction. Their run is counted from the outer edge of the
 * wall plate, so
 * the tasks here set the plate flush with the outer face and the span out from it.
 */
class CarpentryReferenceTest {

    private static final double INCH = 25.4;

    @ParameterizedTest(name = "{4}")
    @CsvSource({
        "192, 8, 115.36, 0.05, 'H, Framing Rule, example 1: span 16 ft, 8 in 12'",
        "288, 4, 151.833, 0.084, 'H, Rafter Table: run 12 ft, 1/6 pitch, 12 ft 7 10/12 in'",
        "288, 12, 203.667, 0.084, 'H, Rafter Table: run 12 ft, 1/2 pitch, 16 ft 11 8/12 in'",
        "296, 12, 209.333, 0.084, 'H, Rafter Table: run 12 ft 4 in, 1/2 pitch, 17 ft 5 4/12 in'",
        "288, 6, 160.99, 0.01, 'H, Rafter Table: run 12 ft, 1/4 pitch, 13 ft 4.99 in'",
        "720, 6, 402.5, 0.25, 'H: span 60 ft, 1/4 pitch, 33 ft 6 1/2 in'",
        "624, 6, 349, 0.5, 'H: span 52 ft, 1/4 pitch, 29 ft 1 in to the nearest inch'",
        "576, 8, 346, 0.5, 'H: span 48 ft, 1/3 pitch, 28 ft 10 in full'",
        "288, 12, 203.667, 0.084, 'H: span 24 ft, 1/2 pitch, 16 ft 11 2/3 in'",
        "288, 6, 161, 0.5, 'N, chapter IV: run 12 ft, 1/4 pitch, 13 ft 5 in'",
        "264, 8, 158.667, 0.084, 'N, chapter IV: run 11 ft, 1/3 pitch, 13 ft 2 8/12 in'",
        "168, 15, 134.5, 0.084, 'N, chapter IV: run 7 ft, 5/8 pitch, 11 ft 2 6/12 in'",
        "276, 12, 195.167, 0.084, 'N, chapter IV: run 11 ft 6 in, 1/2 pitch, 16 ft 3 2/12 in'",
        "192, 7, 111.12, 0.05, 'NAVEDTRA 14044, fig. 2-17: span 16 ft, 7 in 12'",
        "248, 13, 182.79, 0.06, 'US Army EN0069A, fig. 2-17: width 20 ft 8 in, 13 in 12'",
        "300, 6, 167.75, 0.07, 'G, section 17: span 25 ft, 1/4 pitch, 12.5 x 13.42 in'",
    })
    void findsTheLengthOfTheCommonRafter(
            double spanInches, double riseInTwelve, double inches, double tolerance, String source) {
        DrawingTask task = roof(spanInches, riseInTwelve / 12);
        assertThat(value(task, "rafter.length") / INCH).as(source).isCloseTo(inches, within(tolerance));
    }

    @Test
    void findsTheGraphicalExampleOfTheSquare() {
        // H, fig. 43: span 25 ft, rise 10 ft 9 in, scaled off the square as 16 ft 6 in
        DrawingTask task = roof(300, 129.0 / 150);
        assertThat(value(task, "rafter.length") / INCH).isCloseTo(198, within(0.25));
        assertThat(value(task, "roof.rise") / INCH).isCloseTo(129, within(1e-6));
    }

    @Test
    void findsAMetricExample() {
        // a forum's worked example (weak source): rise 1.2 m, span 3.0 m, rafter 1.921 m
        assertThat(RoofTriangle.ofRise(1.5, 1.2).rafterLength()).isCloseTo(1.921, within(0.0005));
    }

    @ParameterizedTest(name = "{2}")
    @CsvSource({
        "300, 150, 'NAVEDTRA 14044, example 2: span 25 ft, run 12 ft 6 in'",
        "248, 124, 'US Army EN0069A: width 20 ft 8 in, run 10 ft 4 in'",
    })
    void takesHalfTheSpanAsRun(double spanInches, double runInches, String source) {
        assertThat(value(roof(spanInches, 0.5), "roof.run") / INCH).as(source).isCloseTo(runInches, within(1e-9));
    }

    @ParameterizedTest(name = "{0} in 12")
    @CsvSource({
        "1, 12.04, 4.76, 1.0035",
        "2, 12.17, 9.46, 1.0138",
        "3, 12.37, 14.04, 1.0308",
        "4, 12.65, 18.43, 1.0541",
        "5, 13.00, 22.62, 1.0833",
        "6, 13.42, 26.57, 1.1180",
        "7, 13.89, 30.26, 1.1577",
        "8, 14.42, 33.69, 1.2019",
        "9, 15.00, 36.87, 1.2500",
        "10, 15.62, 39.81, 1.3017",
        "11, 16.28, 42.51, 1.3566",
        "12, 16.97, 45.00, 1.4142",
        "13, 17.69, 47.29, 1.4743",
        "14, 18.44, 49.40, 1.5366",
        "15, 19.21, 51.34, 1.6008",
        "16, 20.00, 53.13, 1.6667",
        "17, 20.81, 54.78, 1.7341",
        "18, 21.63, 56.31, 1.8028",
    })
    void agreesWithTheFramingSquaresTable(int rise, double perFoot, double degrees, double factor) {
        // length of common rafter per foot of run: instructables, How To Make A Common Rafter, step 4; 6 to 8 and 13 in
        // Griffith, NAVEDTRA 14044, Hodgson and EN0069A. Degrees and factors of 1 to 12: roofgenius, roof pitch degrees
        RoofTriangle triangle = RoofTriangle.ofRise(12, rise);
        assertThat(triangle.rafterLength()).isCloseTo(perFoot, within(0.005));
        assertThat(triangle.pitchDegrees()).isCloseTo(degrees, within(0.005));
        assertThat(triangle.rafterLength() / 12).isCloseTo(factor, within(0.00005));
        assertThat(triangle.riseInTwelve()).isCloseTo(rise, within(1e-9));
    }

    @ParameterizedTest(name = "{0}/{1} pitch")
    @CsvSource({"1, 6, 4", "1, 4, 6", "1, 3, 8", "5, 12, 10", "1, 2, 12", "5, 8, 15", "3, 4, 18", "3, 8, 9"})
    void readsPitchesToldAsRiseOverSpan(double rise, double span, double inTwelve) {
        // US Army EN5156, fig. 3-13; 3/8: Hodgson, figs. 51 to 53
        assertThat(RoofTriangle.ofRise(span / 2, rise).riseInTwelve()).isCloseTo(inTwelve, within(1e-9));
    }

    @ParameterizedTest(name = "brace {0}")
    @CsvSource({"36, 50.91, 0.005", "54, 76.37, 0.005", "42, 59.40, 0.005", "51, 72.12, 0.006", "99, 140, 0.01"})
    void agreesWithTheBraceTable(double leg, double brace, double tolerance) {
        // H and N, brace tables: 42 and 42 in, 4 ft 11.40 in; 51 and 51 in, 6 ft 0.12 in; 8 ft 3 in, 11 ft 8 in
        assertThat(RoofTriangle.ofRise(leg, leg).rafterLength()).isCloseTo(brace, within(tolerance));
    }

    @Test
    void tellsSlopesAsRatios() {
        // US Army EN0069A, fig. 2-11: a slope of 2 in 5 is 4 4/5 in 12
        assertThat(RoofTriangle.ofRise(5, 2).riseInTwelve()).isCloseTo(4.8, within(1e-9));
        // IBR sheeting brochure: 5 degrees is about 1 in 11.5
        assertThat(new RoofTriangle(1, 5).levelForOneUp()).isCloseTo(11.5, within(0.1));
        // Rivington, Slating: 26 1/2 degrees; quarter pitch, 6 in 12
        assertThat(RoofTriangle.ofRise(12, 6).pitchDegrees()).isCloseTo(26.5, within(0.1));
        // NAVEDTRA and H: the plumb and the seat cut of 8 in 12 are 56.31 and 33.69 degrees
        assertThat(90 - RoofTriangle.ofRise(12, 8).pitchDegrees()).isCloseTo(56.31, within(0.005));
    }

    @Test
    void findsTheRunBetweenWallsOfDifferentHeight() {
        // Journal of Light Construction, questions and answers (Holladay): walls 24 in apart in height, 6 in 12: run 48
        // in
        double runMm = 48 * INCH;
        String yaml = Tasks.LEAN_TO
                .replace("pitch: 12", "pitch: " + PlainNumber.text(Math.toDegrees(Math.atan(0.5)), 10))
                .replace("clear-span: 2200", "clear-span: " + PlainNumber.text(runMm - 100, 6));
        Expected.Length rise = (Expected.Length)
                Solver.solve(Tasks.accepted(yaml)).value("high-plate.rise").orElseThrow();
        assertThat(rise.realMm() / INCH).isCloseTo(24, within(1e-6));
    }

    @Test
    void findsSlopingAreasFromPlans() {
        // panotbook, estimating building costs: 1008 square feet of plan at 1/2 pitch, 1432 (it rounds 1.414 to 1.42)
        double factor = RoofTriangle.ofRise(12, 12).alongSlope(1);
        assertThat(1008 * factor).isCloseTo(1432, within(1432 * 0.005));
    }

    @Test
    void findsTheHipAsARafterOnTheDiagonal() {
        // H, example 2: run 8 ft, 8 in 12, hip 18.78 x 8 = 150.24 in; the square rounds 16.97 to 17, 0.1 % high
        double diagonalRun = 8 * RoofTriangle.ofRise(12, 12).rafterLength();
        assertThat(RoofTriangle.ofRise(diagonalRun, 8 * 8).rafterLength()).isCloseTo(150.24, within(0.2));
    }

    @Test
    void shortensRaftersAtARidgeBoard() {
        // H; Miller, Carpenters' Guide: by half the board's thickness, measured square to the plumb cut
        RoofTriangle triangle = RoofTriangle.ofRise(144, 96);
        double level = (triangle.rafterLength() - triangle.rafterLengthAtRidgeBoard(1.5))
                * Math.cos(Math.toRadians(triangle.pitchDegrees()));
        assertThat(level).isCloseTo(0.75, within(1e-9));
    }

    @Test
    void findsTheTrussesOfTheNotes() {
        // R, Best Forms of Roof: principals of 16 ft on 30 ft span and of 24 ft on 45 ft, both 20.36 degrees, supports
        // 8 ft apart
        double king = Math.toDegrees(Math.acos(15.0 / 16));
        assertThat(new RoofTriangle(15, king).rafterLength()).isCloseTo(16, within(1e-9));
        assertThat(new RoofTriangle(22.5, king).rafterLength()).isCloseTo(24, within(1e-9));
        assertThat(EqualSpacing.ofAtMost(16, 8).spaces()).isEqualTo(2);
        assertThat(EqualSpacing.ofAtMost(24, 8).spaces()).isEqualTo(3);
        // Herzog statics set: bottom chord 12 m, height 4 m
        assertThat(RoofTriangle.ofRise(6, 4).rafterLength()).isCloseTo(7.2111, within(0.00005));
    }

    @ParameterizedTest(name = "{3}")
    @CsvSource({
        "720, 12, 510.125, 'H misprint: span 60 ft, 1/2 pitch, 42 ft 6 1/8 in'",
        "720, 8, 432.0625, 'H misprint: span 60 ft, 1/3 pitch, 36 ft 1/16 in'",
        "192, 7.5, 113.76, 'reference.com: 16 ft wide, 5 ft rise, 9.48 ft'",
    })
    void disagreesWithKnownMisprints(double spanInches, double riseInTwelve, double misprint, String source) {
        assertThat(value(roof(spanInches, riseInTwelve / 12), "rafter.length") / INCH)
                .as(source)
                .isNotCloseTo(misprint, within(0.3));
    }

    @Test
    void disagreesWithMisprintedAngles() {
        // roofgenius: 9 in 12 printed as 36.37 degrees, 8 in 12 as 33.75
        assertThat(RoofTriangle.ofRise(12, 9).pitchDegrees()).isNotCloseTo(36.37, within(0.1));
        assertThat(RoofTriangle.ofRise(12, 8).pitchDegrees()).isNotCloseTo(33.75, within(0.05));
    }

    private static DrawingTask roof(double spanInches, double slope) {
        DrawingTask task = Tasks.accepted(Tasks.BOATHOUSE
                .replace("plate-flush: inner", "plate-flush: outer")
                .replace("wall-centre", "outer-face"));
        java.util.Map<String, Object> sizes =
                new java.util.LinkedHashMap<>(task.sizes().asMap());
        sizes.put("pitch", Math.toDegrees(Math.atan(slope)));
        sizes.put("posts.span", spanInches * INCH);
        return new DrawingTask(
                task.id(),
                task.title(),
                task.detail(),
                task.scale(),
                task.eaves(),
                Sizes.of(sizes),
                task.sheet(),
                task.marking());
    }

    private static double value(DrawingTask task, String id) {
        return Solver.derived(task).stream()
                .filter(value -> value.id().equals(id))
                .findFirst()
                .orElseThrow()
                .value();
    }
}
