package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.measure.Finding;
import wallplate.measure.LineMeasure;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/** Which parts have a number, and of which lines they are made. */
class MeasuredPartsTest {

    private static final Segment OUTER = Segment.between(10, 0, 10, 40);
    private static final Segment HATCH = Segment.between(10, 0, 14, 4);
    private static final Segment LOW = Segment.between(20, 50, 20, 55);
    private static final Segment HIGH = Segment.between(23, 50, 23, 55);
    private static final Segment SLOPE = Segment.between(0, 40, 60, 70);

    private static final MeasuredSheet SHEET = new MeasuredSheet(
            List.of(
                    Measurement.of("roof.pitch", new Finding.Quantity(26, 0.1), SLOPE),
                    Measurement.of("wall.thickness", new Finding.Quantity(14, 0.1), OUTER),
                    Measurement.of("support.width", new Finding.Quantity(3, 0.1), LOW, HIGH),
                    Measurement.of("support.spacing", new Finding.Quantity(40, 0.1), HIGH),
                    Measurement.of("gutter.width", new Finding.Absent()),
                    Measurement.of("rafter.depth", new Finding.Quantity(7, 0.1)),
                    Measurement.of(LineMeasure.OUTLINE_BREADTH.key(), new Finding.Quantity(0.5, 0.02), OUTER)),
            Map.of(
                    "rafter.bottom", List.of(SLOPE),
                    "wall.hatch", List.of(HATCH),
                    "wall.outer", List.of(OUTER),
                    "break", List.of(LOW)),
            Optional.empty());

    @Test
    void standInTheOrderOfTheDetailsOwnList() {
        assertThat(MeasuredParts.of(SHEET).keySet()).containsExactly("wall", "support", "rafter");
    }

    @Test
    void haveTheStrokesOfTheirValuesWhereNoLineIsTheirOwn() {
        assertThat(MeasuredParts.of(SHEET).get("support")).containsExactly(LOW, HIGH);
    }

    @Test
    void leaveOutWhatOnlyFillsAPart() {
        assertThat(MeasuredParts.of(SHEET).get("wall")).containsExactly(OUTER);
    }
}
