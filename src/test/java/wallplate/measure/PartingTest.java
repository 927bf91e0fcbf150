package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Where values that go along a line fall from a high level to a low one. */
class PartingTest {

    @Test
    void partsAStepWhereItIs() {
        double[] values = new double[60];
        Arrays.fill(values, 0, 25, 100);

        Parting parting = new Parting(values);

        assertThat(parting.places(3).get(0)).isEqualTo(25);
        assertThat(parting.error(25)).isZero();
    }

    @Test
    void namesTwoFallsTheLargerFirst() {
        double[] values = new double[90];
        Arrays.fill(values, 0, 30, 100);
        Arrays.fill(values, 30, 60, 25);

        assertThat(new Parting(values).places(3)).startsWith(30);
        assertThat(new Parting(values).places(3)).allMatch(place -> place == 30 || Math.abs(place - 30) >= 6);
    }
}
