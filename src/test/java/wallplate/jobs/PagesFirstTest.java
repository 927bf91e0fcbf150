package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class PagesFirstTest {

    private static final Duration LONG = Duration.ofMinutes(1);

    @Test
    void doesNotWaitWhileFewPagesAreMade() {
        PagesFirst pages = new PagesFirst(2, LONG);
        pages.begin();
        pages.begin();

        assertThat(pages.awaitRoom()).isTrue();
    }

    @Test
    void waitsUntilAPageIsDone() throws Exception {
        PagesFirst pages = new PagesFirst(1, LONG);
        pages.begin();
        pages.begin();
        CompletableFuture<Boolean> waiting = CompletableFuture.supplyAsync(pages::awaitRoom);
        TimeUnit.MILLISECONDS.sleep(100);
        assertThat(waiting).isNotDone();

        pages.end();

        assertThat(waiting.get(20, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    void goesOnAfterAWhileHoweverBusyThePagesAre() {
        PagesFirst pages = new PagesFirst(0, Duration.ofMillis(50));
        pages.begin();

        assertThat(pages.awaitRoom()).isFalse();
    }
}
