package wallplate.web.sets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wallplate.records.Progress;

class ProgressWatchTest {

    private final Map<Long, Integer> read = new HashMap<>();
    private final List<Collection<Long>> questions = new ArrayList<>();
    private Instant now = Instant.parse("2026-11-28T08:00:00Z");
    private boolean unreachable;
    private final ProgressWatch watch = new ProgressWatch(this::standings, clock());

    private Map<Long, Progress> standings(Collection<Long> sets) {
        if (unreachable) {
            throw new IllegalArgumentException("no database");
        }
        questions.add(sets);
        Map<Long, Progress> standings = new HashMap<>();
        sets.forEach(set -> standings.put(set, new Progress(40, 40 - done(set), 0, done(set), 0, 0, 0, 0)));
        return standings;
    }

    private int done(long set) {
        return read.getOrDefault(set, 0);
    }

    private Clock clock() {
        return ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
    }

    private List<Integer> pageOf(long set) {
        List<Integer> heard = new ArrayList<>();
        watch.add(set, progress -> heard.add(progress.finished()));
        return heard;
    }

    @Test
    void asksOnceForAllPagesThatAreOpen() {
        for (int page = 0; page < 50; page++) {
            pageOf(page % 3);
        }
        questions.clear();

        watch.look();

        assertThat(questions).singleElement().satisfies(sets -> assertThat(sets).containsExactlyInAnyOrder(0L, 1L, 2L));
    }

    @Test
    void asksNothingWhileNoPageIsOpen() {
        watch.look();
        ProgressWatch.Listener page = progress -> {};
        watch.add(7, page);
        watch.remove(7, page);
        questions.clear();

        watch.look();

        assertThat(questions).isEmpty();
    }

    @Test
    void tellsEveryPageOfASetOfEachChangeAndNothingElse() {
        List<Integer> first = pageOf(1);
        List<Integer> second = pageOf(1);
        List<Integer> other = pageOf(2);
        read.put(1L, 5);
        watch.look();
        watch.look();
        List<Integer> late = pageOf(1);

        assertThat(first).isEqualTo(second).containsExactly(0, 5);
        assertThat(other).containsExactly(0);
        assertThat(late).containsExactly(5);
    }

    @Test
    void speaksNowAndThenThoughNothingChanges() {
        List<Integer> page = pageOf(1);
        now = now.plus(ProgressWatch.SPEAK_AT_LEAST_EVERY).plus(Duration.ofMillis(1));
        watch.look();

        assertThat(page).containsExactly(0, 0);
    }

    @Test
    void forgetsAPageThatIsGoneAndTellsTheOthers() {
        List<Integer> asked = new ArrayList<>();
        watch.add(1, progress -> {
            asked.add(progress.finished());
            throw new IOException("connection reset");
        });
        watch.add(1, progress -> {
            asked.add(progress.finished());
            throw new IllegalStateException("already complete");
        });
        List<Integer> page = pageOf(1);
        read.put(1L, 1);
        watch.look();

        assertThat(asked).containsExactly(0, 0);
        assertThat(page).containsExactly(0, 1);
    }

    @Test
    void goesOnAfterADatabaseThatWasAway() {
        List<Integer> page = pageOf(1);
        read.put(1L, 2);
        unreachable = true;
        assertThatThrownBy(watch::look).hasMessage("no database");
        unreachable = false;
        watch.look();

        assertThat(page).containsExactly(0, 2);
    }
}
