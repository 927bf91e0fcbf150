package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Tasks;

/** The model answer of the boathouse, 1:20, on a page whose heel point is known. */
class ModelOnSheetTest {

    private static final ExpectedDrawing BOATHOUSE = Solver.solve(Tasks.boathouse());
    private static final Point HEEL = new Point(120, 80);

    @ParameterizedTest
    @ValueSource(strings = {"left", "right"})
    void liesWithItsHeelPointOnTheDrawings(String eaves) {
        ModelOnSheet model = ModelOnSheet.of(BOATHOUSE, measured(Optional.of(HEEL), eaves)).orElseThrow();
        // The heel point is the plate's top outer corner, and the rafter's underside passes through it.
        Segment plateTop = model.first("wall-plate.top").orElseThrow();
        assertThat(Math.min(away(plateTop.start()), away(plateTop.end()))).isCloseTo(0, within(1e-9));
        Segment underside = model.first("rafter.bottom").orElseThrow();
        assertThat(besideTheHeel(underside)).isCloseTo(0, within(1e-9));
        // 400 / 20 mm of overhang and (230 - 100) / 20 mm from the wall to the plate, on the side where the learner drew the eaves.
        double eavesEnd = eaves.equals("left")
                ? Math.min(underside.start().x(), underside.end().x())
                : Math.max(underside.start().x(), underside.end().x());
        assertThat(eavesEnd - HEEL.x()).isCloseTo(eaves.equals("left") ? -26.5 : 26.5, within(1e-9));
    }

    @Test
    void isLeftOutWhereTheHeelPointWasNotFound() {
        assertThat(ModelOnSheet.of(BOATHOUSE, measured(Optional.empty(), "left"))).isEmpty();
    }

    @Test
    void showsTheRafterWhereTheRoofsPitchIsSpokenOf() {
        assertThat(BOATHOUSE.lines().stream().filter(line -> ModelOnSheet.isOf("roof", line)))
                .isNotEmpty()
                .allSatisfy(line -> assertThat(line.part()).isEqualTo("rafter"));
    }

    private static MeasuredSheet measured(Optional<Point> heel, String eaves) {
        return new MeasuredSheet(
                List.of(Measurement.of("drawing.eaves", new Finding.Word(eaves))), Map.of(), heel);
    }

    private static double away(Point place) {
        return Math.hypot(place.x() - HEEL.x(), place.y() - HEEL.y());
    }

    private static double besideTheHeel(Segment line) {
        double x = line.end().x() - line.start().x();
        double y = line.end().y() - line.start().y();
        return ((HEEL.x() - line.start().x()) * y - (HEEL.y() - line.start().y()) * x) / Math.hypot(x, y);
    }
}
