package wallplate.jobs;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import wallplate.records.KeptTask;
import wallplate.records.ScanStore;
import wallplate.records.SelfChecks;

/** Takes learners' photographs in, to be read before every class set. */
@Component
public class SelfCheckQueue {

    static final TaskDescriptor<Long> READ = TaskDescriptor.of("read-self-check", Long.class);

    /** At about a second each, nobody of so many waits longer than a lesson. */
    private static final int MOST_WAITING = 2000;

    private final SchedulerClient scheduler;
    private final SelfChecks checks;
    private final ScanStore store;
    private final TransactionOperations together;
    private final Clock clock;

    SelfCheckQueue(
            @Lazy SchedulerClient scheduler,
            SelfChecks checks,
            ScanStore store,
            TransactionOperations together,
            Clock clock) {
        this.scheduler = scheduler;
        this.checks = checks;
        this.store = store;
        this.together = together;
        this.clock = clock;
    }

    /**
     * Takes a photograph in.
     *
     * @param language of the advice, as a BCP 47 tag
     * @param before the verdicts of the check before this one, by criterion
     * @return the word in the address of its result; empty where so many wait that none is taken
     */
    public Optional<String> add(KeptTask task, String language, Map<String, String> before, InputStream photograph)
            throws IOException {
        if (checks.waiting() >= MOST_WAITING) {
            return Optional.empty();
        }
        String content = store.put(photograph).name();
        return Optional.ofNullable(together.execute(step -> {
            SelfChecks.Added added = checks.add(task.id(), language, before, content);
            scheduler.scheduleIfNotExists(READ.instance(Long.toString(added.id()))
                    .data(added.id())
                    .priority(Turns.SELF_CHECK)
                    .scheduledTo(clock.instant()));
            return added.token();
        }));
    }
}
