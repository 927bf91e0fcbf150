package wallplate.web.sets;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import jakarta.annotation.PreDestroy;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import wallplate.records.Progress;
import wallplate.records.Sheets;

/**
 * Tells open pages when the standing of their class set has changed.
 *
 * <p>It looks into the database, because a sheet may be read by another process than the one that shows the page.
 */
@Component
class ProgressStream {

    private static final Duration LOOK_EVERY = Duration.ofMillis(700);
    private static final Duration LISTEN_FOR = Duration.ofMinutes(30);
    /** So that a connection whose page is gone is noticed although nothing changes. */
    private static final Duration SPEAK_AT_LEAST_EVERY = Duration.ofSeconds(15);

    private final Sheets sheets;
    private final Clock clock;
    private final Map<Long, Listeners> listening = new ConcurrentHashMap<>();
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "progress");
        thread.setDaemon(true);
        return thread;
    });

    ProgressStream(Sheets sheets, Clock clock) {
        this.sheets = sheets;
        this.clock = clock;
        watch.scheduleWithFixedDelay(
                this::lookAtAll, LOOK_EVERY.toMillis(), LOOK_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    SseEmitter listen(long classSetId) {
        SseEmitter emitter = new SseEmitter(LISTEN_FOR.toMillis());
        Listeners listeners = listening.computeIfAbsent(classSetId, id -> new Listeners());
        listeners.emitters.add(emitter);
        emitter.onCompletion(() -> listeners.emitters.remove(emitter));
        emitter.onTimeout(emitter::complete);
        emitter.onError(error -> listeners.emitters.remove(emitter));
        listeners.send(sheets.progress(classSetId), clock.instant());
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

    private void lookAtAll() {
        listening.forEach((classSetId, listeners) -> {
            if (listeners.emitters.isEmpty()) {
                listening.remove(classSetId, listeners);
            } else {
                listeners.tell(sheets.progress(classSetId), clock.instant());
            }
        });
    }

    @PreDestroy
    void close() {
        watch.shutdownNow();
        listening.values().forEach(listeners -> listeners.emitters.forEach(SseEmitter::complete));
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

    /** The open pages of one class set. */
    private static final class Listeners {

        private final List<SseEmitter> emitters = new CopyOnWriteArrayList<>();
        private Optional<Progress> said = Optional.empty();
        private Instant saidAt = Instant.EPOCH;

        synchronized void tell(Progress progress, Instant now) {
            boolean silentTooLong = Duration.between(saidAt, now).compareTo(SPEAK_AT_LEAST_EVERY) > 0;
            if (silentTooLong || said.filter(progress::equals).isEmpty()) {
                send(progress, now);
            }
        }

        synchronized void send(Progress progress, Instant now) {
            said = Optional.of(progress);
            saidAt = now;
            for (SseEmitter emitter : emitters) {
                try {
                    emitter.send(SseEmitter.event().name("standing").data(progress.finished() + "/" + progress.sheets()));
                } catch (IOException | IllegalStateException gone) {
                    emitters.remove(emitter);
                }
            }
        }
    }
}
