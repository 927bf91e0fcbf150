package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.Predicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;

/** Diagonals in timbers of a rendered section, also in such as are hardly broader than three lines. */
class DiagonalsTest {

    /** The plate's depth on paper is 3 mm at first, 1.35 and 1.1 mm in the end. */
    @ParameterizedTest
    @CsvSource({"60, true", "60, false", "27, true", "27, false", "22, true", "22, false"})
    void seesWhetherDiagonalsCrossTheWallPlate(int depthMm, boolean areDrawn) {
        ExpectedDrawing drawing = MeasureTasks.solved(MeasureTasks.NET_LOFT.replace(
                "wall-plate: {width: 110, depth: 60}", "wall-plate: {width: 110, depth: " + depthMm + "}"));
        Predicate<DrawnLine> isDiagonalOfPlate =
                line -> line.part().equals("wall-plate") && line.edge().startsWith("cross");
        assertThat(drawing.lines()).anyMatch(isDiagonalOfPlate);

        MeasuredSheet sheet = new Measurer()
                .measure(ExactPage.of(drawing, areDrawn ? line -> true : isDiagonalOfPlate.negate()), drawing);

        assertThat(sheet.measurements())
                .filteredOn(each -> each.key().equals("wall-plate.crossed"))
                .singleElement()
                .satisfies(each -> assertThat(each.finding()).isEqualTo(new Finding.YesNo(areDrawn)));
    }

    /** Where a flat plate's diagonals would run lies its own outline, a little to their side. */
    @ParameterizedTest
    @CsvSource({"34, true", "34, false", "30, true", "30, false"})
    void takesNoOutlineOfAFlatPlateForItsDiagonals(int depthMm, boolean areDrawn) {
        seesWhetherDiagonalsCrossTheWallPlate(depthMm, areDrawn);
    }
}
