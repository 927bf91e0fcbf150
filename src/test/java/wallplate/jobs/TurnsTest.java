package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TurnsTest {

    @Test
    void beginsWithTheTurnThatIsBeingServed() {
        assertThat(Turns.after(29_900, Optional.empty())).isEqualTo(29_900);
    }

    @Test
    void comesAfterTheClassesOwnLastSheet() {
        assertThat(Turns.after(29_900, Optional.of(29_801))).isEqualTo(29_800);
    }

    @Test
    void staysWithinTheColumnAndBelowWhatALearnerWaitsFor() {
        assertThat(Turns.after(Turns.LAST, Optional.of(Turns.LAST))).isEqualTo(Turns.LAST);
        assertThat(Turns.after(Turns.SELF_CHECK, Optional.empty())).isEqualTo(Turns.FIRST);
        assertThat(Turns.LAST).isGreaterThanOrEqualTo(Short.MIN_VALUE);
        assertThat(Turns.SELF_CHECK).isLessThanOrEqualTo(Short.MAX_VALUE);
    }

    @Test
    void waitsLongerEachTimeAndNeverLongerThanTenMinutes() {
        assertThat(IntStream.rangeClosed(1, 8).mapToObj(GrowingWait::waitAfter).map(Duration::toSeconds))
                .containsExactly(2L, 6L, 18L, 54L, 162L, 486L, 600L, 600L);
    }
}
