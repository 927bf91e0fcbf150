package wallplate.web.sets;

import jakarta.annotation.PreDestroy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import wallplate.records.Progress;
import wallplate.records.Sheets;

/**
 * Tells open pages when the standing of their class set has changed.
 *
 * <p>It looks into the database, because a sheet may be read by another process than the one that shows the page: one
 * question at a time for all pages that this process has open.
 */
@Component
class ProgressStream {

    private static final Logger LOG = LoggerFactory.getLogger(ProgressStream.class);
    private static final Duration LOOK_EVERY = Duration.ofMillis(700);
    private static final Duration LISTEN_FOR = Duration.ofMinutes(30);

    private final Sheets sheets;
    private final Clock clock;
    private final ProgressWatch watch;
    private final Set<SseEmitter> open = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService looking = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "progress");
        thread.setDaemon(true);
        return thread;
    });

    ProgressStream(Sheets sheets, Clock clock) {
        this.sheets = sheets;
        this.clock = clock;
        this.watch = new ProgressWatch(sheets::progress, clock);
        looking.scheduleWithFixedDelay(this::look, LOOK_EVERY.toMillis(), LOOK_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    /** A failed look is no reason never to look again. */
    private void look() {
        try {
            watch.look();
        } catch (DataAccessException | TransactionException unreachable) {
            LOG.warn("the standing of open class sets cannot be asked for: {}", unreachable.getMessage());
        }
    }

    SseEmitter listen(long classSetId) {
        SseEmitter emitter = new SseEmitter(LISTEN_FOR.toMillis());
        ProgressWatch.Listener listener = progress -> emitter.send(
                SseEmitter.event().name("standing").data(progress.finished() + "/" + progress.sheets()));
        Runnable forget = () -> {
            watch.remove(classSetId, listener);
            open.remove(emitter);
        };
        open.add(emitter);
        emitter.onCompletion(forget);
        emitter.onTimeout(emitter::complete);
        emitter.onError(error -> forget.run());
        watch.add(classSetId, listener);
        return emitter;
    }

    /** How long the rest will take at the pace of the sheets read last; empty where that cannot be told yet. */
    Optional<Duration> timeLeft(long classSetId, Progress progress) {
        if (!progress.isAtWork()) {
            return Optional.empty();
        }
        return Pace.of(sheets.lastFinished(classSetId, Pace.LOOKED_AT), clock.instant())
                .map(perSheet -> perSheet.multipliedBy(progress.waiting() + progress.reading()));
    }

    @PreDestroy
    void close() {
        looking.shutdownNow();
        open.forEach(SseEmitter::complete);
    }

    /** The time from one finished sheet to the next, from the last few, the earliest of them first. */
    static final class Pace {

        static final int LOOKED_AT = 8;
        private static final int FEWEST = 3;
        private static final Duration TOO_LONG_AGO = Duration.ofMinutes(5);

        private Pace() {}

        static Optional<Duration> of(List<Instant> finished, Instant now) {
            List<Instant> last = finished.stream()
                    .filter(instant -> Duration.between(instant, now).compareTo(TOO_LONG_AGO) <= 0)
                    .toList();
            return last.size() < FEWEST
                    ? Optional.empty()
                    : Optional.of(Duration.between(last.get(0), last.get(last.size() - 1)).dividedBy(last.size() - 1L));
        }
    }
}
