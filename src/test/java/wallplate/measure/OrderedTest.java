package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Parallel lines given to a rafter's two edges and a covering's two edges, with lines missing and lines too many. */
class OrderedTest {

    private static final double[] USUAL = {7.5, 3.75, 2};
    private static final double[] ALL_ASKED = {
        Ordered.MISSING_COST, Ordered.MISSING_COST, Ordered.MISSING_COST, Ordered.MISSING_COST
    };

    @Test
    void givesEachRoleItsLine() {
        assertThat(assign(new double[] {10, 17.5, 21.25, 23.25}).lines()).containsExactly(0, 1, 2, 3);
    }

    @Test
    void leavesARoleEmptyWhoseLineIsMissing() {
        Ordered.Assignment assignment = assign(new double[] {10, 17.5, 23.25});
        assertThat(assignment.lines()).containsExactly(0, 1, -1, 2);
        assertThat(assignment.line(2)).isEmpty();
        assertThat(assignment.line(3)).contains(2);
    }

    @Test
    void leavesOutALineThatBelongsToNoRole() {
        assertThat(assign(new double[] {10, 14.1, 17.5, 21.25, 23.25}).lines()).containsExactly(0, 2, 3, 4);
    }

    @Test
    void leavesOutALineBeyondTheLast() {
        assertThat(assign(new double[] {4, 10, 17.5, 21.25, 23.25, 31}).lines()).containsExactly(1, 2, 3, 4);
    }

    @Test
    void keepsTheOrderForASizeDrawnWrong() {
        assertThat(assign(new double[] {10, 19.5, 23.25, 25.25}).lines()).containsExactly(0, 1, 2, 3);
    }

    @Test
    void findsNothingWithoutLines() {
        assertThat(assign(new double[] {}).lines()).containsExactly(-1, -1, -1, -1);
    }

    @Test
    void whatALineIsByItselfDecidesBetweenTwoPlaces() {
        Ordered.Fitness secondLineIsNoEdge = (role, line) -> role == 1 && line == 1 ? 2 : 0;
        double[] offsets = {10, 17.2, 17.8, 21.25, 23.25};
        assertThat(assign(offsets, secondLineIsNoEdge, lines -> 0).lines()).containsExactly(0, 2, 3, 4);
    }

    @Test
    void linesThatComeTogetherAreWeighedTogether() {
        Ordered.Together coveringNeedsBoth = lines -> (lines[2] < 0) != (lines[3] < 0) ? 10 : 0;
        double[] offsets = {10, 17.5, 23.25};
        int[] lines = assign(offsets, (role, line) -> 0, coveringNeedsBoth).lines();
        assertThat(lines[2] < 0).isEqualTo(lines[3] < 0);
    }

    private static Ordered.Assignment assign(double[] offsets) {
        return assign(offsets, (role, line) -> 0, lines -> 0);
    }

    private static Ordered.Assignment assign(double[] offsets, Ordered.Fitness fitness, Ordered.Together together) {
        double[] lengths = new double[offsets.length];
        java.util.Arrays.fill(lengths, 80);
        List<Ordered.Gap> gaps = List.of(gap(USUAL[0]), gap(USUAL[1]), gap(USUAL[2]));
        return Ordered.assign(offsets, lengths, gaps, USUAL, ALL_ASKED, fitness, together);
    }

    /** Nothing where the gap is right, rising to three. */
    private static Ordered.Gap gap(double usual) {
        return gapMm -> Math.min(3, Math.pow((gapMm - usual) / 0.45, 2) / 2);
    }
}
