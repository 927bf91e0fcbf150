package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/** A roof whose tie beam was left out, over walls that the paper's edge cuts short. */
class DrawingCheckTest {

    private static final SlopingLines SLOPES = new SlopingLines(
            30,
            IntStream.range(0, 4)
                    .mapToObj(i -> fitted(Segment.between(60, 80 + 5 * i, 180, 149 + 5 * i)))
                    .toList());

    private static final Fitted BAR = fitted(Segment.between(40, 20, 140, 20));

    @Test
    void takesShortFacesOfWallAndFasciaForASection() {
        assertThat(DrawingCheck.ofSection(withUprights(4, 10), Optional.of(SLOPES), Turn.UPRIGHT)).isEmpty();
    }

    @Test
    void asksForMoreThanASlopeWithTwoShortUprights() {
        assertThat(DrawingCheck.ofSection(withUprights(2, 10), Optional.of(SLOPES), Turn.UPRIGHT))
                .hasValueSatisfying(reason -> assertThat(reason).contains("needs level and upright ones"));
    }

    private static AxisLines withUprights(int count, double length) {
        List<Fitted> uprights = IntStream.range(0, count)
                .mapToObj(i -> fitted(Segment.between(70 + 6 * i, 60, 70 + 6 * i, 60 + length)))
                .toList();
        return new AxisLines(0, List.of(BAR), uprights);
    }

    private static Fitted fitted(Segment segment) {
        return new Fitted(segment, 0.5, 1, 0.03);
    }
}
