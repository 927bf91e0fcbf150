package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The likeliest of several readings, and whether another comes too near. */
class RankingTest {

    @Test
    void takesTheCheapestReading() {
        Ranking<String> ranking = new Ranking<>(9);
        ranking.offer("far", 20, 3);
        ranking.offer("near", 10, 1);
        ranking.offer("other", 15, 2);
        assertThat(ranking.best()).contains("near");
    }

    @Test
    void takesNoReadingThatCostsTooMuch() {
        Ranking<String> ranking = new Ranking<>(4);
        ranking.offer("at the limit", 10, 4);
        assertThat(ranking.best()).isEmpty();
        assertThat(ranking.rival(0.1, 10)).isEmpty();
    }

    @Test
    void keepsTheFirstOfTwoEquallyLikely() {
        Ranking<String> ranking = new Ranking<>(9);
        ranking.offer("first", 10, 1);
        ranking.offer("second", 12, 1);
        assertThat(ranking.best()).contains("first");
    }

    @Test
    void namesTheNearestRivalWithAnotherValue() {
        Ranking<String> ranking = new Ranking<>(9);
        ranking.offer("best", 10, 1);
        ranking.offer("the same line again", 10.2, 1.1);
        ranking.offer("dearer rival", 14, 1.4);
        ranking.offer("rival", 12, 1.3);
        assertThat(ranking.rival(0.5, 0.5)).contains(12.0);
    }

    @Test
    void hasNoRivalAmongMuchDearerReadings() {
        Ranking<String> ranking = new Ranking<>(9);
        ranking.offer("best", 10, 1);
        ranking.offer("dear", 12, 1.6);
        assertThat(ranking.rival(0.5, 0.5)).isEmpty();
    }
}
