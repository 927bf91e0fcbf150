package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;
import wallplate.solver.ExpectedDrawing;

/** What is not known of a page's scale, stretch and level must be seen in every measurement made on it. */
class CarriedDoubtTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);

    private static MeasuredSheet sure;

    @BeforeAll
    static void measureOnAPageThatIsKnownWell() {
        sure = measured(0.001, 0.001, 0.001, false);
    }

    @Test
    void aDoubtfulScaleGoesIntoEveryLength() {
        MeasuredSheet doubtful = measured(1, 0.001, 0.001, false);

        for (Measurement each : sure.measurements()) {
            if (each.finding() instanceof Finding.Quantity quantity && !each.key().equals("roof.pitch")) {
                double expected = Math.hypot(quantity.uncertainty(), quantity.value() / 100);
                assertThat(uncertainty(doubtful, each.key())).as(each.key()).isCloseTo(expected, within(0.002));
            }
        }
    }

    @Test
    void aDoubtfulStretchGoesIntoUprightLengthsAndNotIntoLevelOnes() {
        MeasuredSheet doubtful = measured(0.001, 1, 0.001, false);

        double depth = value("tie-beam.depth");
        assertThat(uncertainty(doubtful, "tie-beam.depth"))
                .isCloseTo(Math.hypot(uncertainty(sure, "tie-beam.depth"), depth / 100), within(0.002));
        assertThat(uncertainty(doubtful, "wall.thickness"))
                .isCloseTo(uncertainty(sure, "wall.thickness"), within(0.002));
        assertThat(uncertainty(doubtful, "rafter.depth"))
                .isGreaterThan(uncertainty(sure, "rafter.depth"))
                .isLessThan(Math.hypot(uncertainty(sure, "rafter.depth"), value("rafter.depth") / 100));
    }

    /** A stretch of s turns a line of pitch p by s sin p cos p radians. */
    @Test
    void aDoubtfulStretchGoesIntoThePitch() {
        double pitch = Math.toRadians(value("roof.pitch"));
        double turned = Math.toDegrees(0.01 * Math.sin(pitch) * Math.cos(pitch));

        assertThat(uncertainty(measured(0.001, 1, 0.001, false), "roof.pitch"))
                .isCloseTo(Math.hypot(uncertainty(sure, "roof.pitch"), turned), within(0.002));
    }

    @Test
    void aDoubtfulLevelGoesIntoThePitch() {
        assertThat(uncertainty(measured(0.001, 0.001, 1, false), "roof.pitch"))
                .isGreaterThan(uncertainty(sure, "roof.pitch"));
    }

    @Test
    void nothingIsAbsentOrCountedOnASheetThatIsCutOff() {
        LevelPage whole = ExactPage.of(NET_LOFT, line -> !line.part().equals("gutter"));
        MeasuredSheet cut = new Measurer().measure(with(whole, whole.calibration(), true), NET_LOFT);

        for (String key : List.of("gutter.width", "gutter.depth", "support.count")) {
            assertThat(cut.measurement(key).orElseThrow().finding())
                    .as(key)
                    .isInstanceOfSatisfying(
                            Finding.Uncertain.class,
                            finding -> assertThat(finding.reason()).contains("not in the picture"));
        }
        assertThat(cut.measurement("rafter.depth").orElseThrow().finding().isMeasured()).isTrue();
    }

    private static MeasuredSheet measured(double scale, double stretch, double level, boolean cutOff) {
        Calibration calibration =
                new Calibration(Calibration.Source.REFERENCE_BAR, 100, scale, stretch, level);
        return new Measurer().measure(with(ExactPage.of(NET_LOFT, line -> true), calibration, cutOff), NET_LOFT);
    }

    private static LevelPage with(LevelPage page, Calibration calibration, boolean cutOff) {
        return new LevelPage(
                page.ink(),
                page.toScan(),
                page.scanPixelsPerMm(),
                page.rotationDegrees(),
                page.photograph(),
                calibration,
                page.bar(),
                page.warnings(),
                Optional.empty(),
                cutOff);
    }

    private static double value(String key) {
        return ((Finding.Quantity) sure.measurement(key).orElseThrow().finding()).value();
    }

    private static double uncertainty(MeasuredSheet sheet, String key) {
        return ((Finding.Quantity) sheet.measurement(key).orElseThrow().finding()).uncertainty();
    }
}
