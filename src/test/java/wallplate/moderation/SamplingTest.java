package wallplate.moderation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.moderation.SamplingRule.Choice;

class SamplingTest {

    @Test
    void drawsTheHighestTheMiddleAndTheLowestTotals() {
        // Sheet n has the total n, so that the sheets drawn are the totals drawn.
        assertThat(draw(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(6), 20, 7))
                .containsExactlyInAnyOrder(20L, 19L, 11L, 10L, 2L, 1L);
        assertThat(draw(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(5), 20, 7))
                .containsExactlyInAnyOrder(20L, 19L, 11L, 2L, 1L);
        assertThat(draw(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(1), 20, 7)).containsExactly(20L);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void drawsSoManyDifferentSheets(int size) {
        for (Choice choice : Choice.values()) {
            assertThat(draw(choice, new SampleSize.Number(size), 12, 3)).hasSize(size).doesNotHaveDuplicates();
        }
    }

    @Test
    void roundsAPartUpAndNeverDrawsMoreThanThereAre() {
        assertThat(new SampleSize.Percent(10).of(31)).isEqualTo(4);
        assertThat(new SampleSize.Percent(100).of(31)).isEqualTo(31);
        assertThat(new SampleSize.Percent(1).of(1)).isEqualTo(1);
        assertThat(new SampleSize.Number(40).of(31)).isEqualTo(31);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void drawsTheSameAgainWhateverTheOrderOfTheSheets(long seed) {
        List<Candidate> candidates = new ArrayList<>(candidates(30));
        for (Choice choice : Choice.values()) {
            SamplingRule rule = new SamplingRule(choice, new SampleSize.Percent(20), seed);
            List<Long> first = Sampling.draw(rule, candidates);
            Collections.shuffle(candidates, new Random(seed + 100));
            assertThat(Sampling.draw(rule, candidates)).isEqualTo(first);
        }
    }

    /** Four of twelve: each sheet in a third of the draws. 3,000 draws, so a share strays by 0.035 once in 10,000. */
    @Test
    void drawsEverySheetWithTheSameChance() {
        int[] drawn = new int[13];
        LongStream.range(0, 3000)
                .forEach(seed -> draw(Choice.AT_RANDOM, new SampleSize.Number(4), 12, seed)
                        .forEach(sheet -> drawn[sheet.intValue()]++));

        for (int sheet = 1; sheet <= 12; sheet++) {
            assertThat(drawn[sheet] / 3000.0).as("sheet %d", sheet).isBetween(1 / 3.0 - 0.035, 1 / 3.0 + 0.035);
        }
    }

    /** The order of marking must not tell which totals are high: the best sheet comes first no more often than others. */
    @Test
    void putsThemInAnOrderThatTellsNothing() {
        long bestFirst = LongStream.range(0, 3000)
                .filter(seed -> draw(Choice.TOP_MIDDLE_BOTTOM, new SampleSize.Number(6), 20, seed).get(0) == 20)
                .count();

        assertThat(bestFirst / 3000.0).isBetween(1 / 6.0 - 0.03, 1 / 6.0 + 0.03);
    }

    @Test
    void statesItsRule() {
        assertThat(new SamplingRule(Choice.AT_RANDOM, new SampleSize.Percent(20), 11).words())
                .isEqualTo("20 % of the sheets, rounded up: every sheet with the same chance; drawn from the number 11.");
    }

    @Test
    void refusesSizesThatAreNone() {
        assertThatThrownBy(() -> new SampleSize.Number(0)).hasMessageContaining("1 or more");
        assertThatThrownBy(() -> new SampleSize.Percent(101)).hasMessageContaining("1 to 100");
    }

    private static List<Long> draw(Choice choice, SampleSize size, int sheets, long seed) {
        return Sampling.draw(new SamplingRule(choice, size, seed), candidates(sheets));
    }

    private static List<Candidate> candidates(int sheets) {
        return IntStream.rangeClosed(1, sheets)
                .mapToObj(sheet -> new Candidate(sheet, sheet))
                .toList();
    }
}
