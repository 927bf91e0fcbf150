package wallplate.web.sets;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import wallplate.records.Progress;

/**
 * Knows who looks at which class set, and tells all of them when its standing has changed.
 *
 * <p>However many pages are open, a look is one question about all of their sets; while no page is open, none. Safe for
 * several threads: nobody is told of a standing after a later one.
 */
final class ProgressWatch {

    /** So that a connection whose page is gone is noticed although nothing changes. */
    static final Duration SPEAK_AT_LEAST_EVERY = Duration.ofSeconds(15);

    /** An open page. */
    interface Listener {

        /** @throws IOException where the page is gone; it is told nothing more */
        void hear(Progress progress) throws IOException;
    }

    /** The open pages of one set, and what they were told last. */
    private static final class Audience {

        private final List<Listener> listeners = new ArrayList<>();
        private Optional<Progress> said = Optional.empty();
        private Instant saidAt = Instant.EPOCH;
    }

    private final Function<Collection<Long>, Map<Long, Progress>> standings;
    private final Clock clock;
    private final Map<Long, Audience> audiences = new HashMap<>();

    /** @param standings the standings of sets, by their ids */
    ProgressWatch(Function<Collection<Long>, Map<Long, Progress>> standings, Clock clock) {
        this.standings = standings;
        this.clock = clock;
    }

    /** Adds a page and tells it how the set stands; another page of the same set has asked already. */
    synchronized void add(long classSetId, Listener listener) {
        Audience audience = audiences.computeIfAbsent(classSetId, id -> new Audience());
        audience.listeners.add(listener);
        if (audience.said.isEmpty()) {
            audience.said = Optional.ofNullable(standings.apply(List.of(classSetId)).get(classSetId));
            audience.saidAt = clock.instant();
        }
        audience.said.ifPresent(progress -> tell(audience, List.of(listener), progress));
        forgetEmpty(classSetId, audience);
    }

    synchronized void remove(long classSetId, Listener listener) {
        Audience audience = audiences.get(classSetId);
        if (audience != null) {
            audience.listeners.remove(listener);
            forgetEmpty(classSetId, audience);
        }
    }

    /** Asks how all sets stand that somebody looks at, and tells those of whose set something has changed. */
    synchronized void look() {
        if (audiences.isEmpty()) {
            return;
        }
        Instant now = clock.instant();
        standings.apply(List.copyOf(audiences.keySet())).forEach((classSetId, progress) -> {
            Audience audience = audiences.get(classSetId);
            boolean silentTooLong = Duration.between(audience.saidAt, now).compareTo(SPEAK_AT_LEAST_EVERY) > 0;
            if (silentTooLong || audience.said.filter(progress::equals).isEmpty()) {
                audience.said = Optional.of(progress);
                audience.saidAt = now;
                tell(audience, List.copyOf(audience.listeners), progress);
                forgetEmpty(classSetId, audience);
            }
        });
    }

    private static void tell(Audience audience, List<Listener> listeners, Progress progress) {
        for (Listener listener : listeners) {
            try {
                listener.hear(progress);
            } catch (IOException | IllegalStateException gone) {
                audience.listeners.remove(listener);
            }
        }
    }

    private void forgetEmpty(long classSetId, Audience audience) {
        if (audience.listeners.isEmpty()) {
            audiences.remove(classSetId);
        }
    }
}
