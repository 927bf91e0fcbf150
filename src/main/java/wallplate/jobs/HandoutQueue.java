package wallplate.jobs;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.io.IOException;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import wallplate.handouts.PreparedFile;
import wallplate.handouts.PreparedFiles;
import wallplate.privacy.LeftOvers;

/** Has files prepared that take too long to be made while somebody waits for the answer. */
@Component
public class HandoutQueue {

    static final TaskDescriptor<Long> PREPARE = TaskDescriptor.of("prepare-file", Long.class);

    private static final Logger LOG = LoggerFactory.getLogger(HandoutQueue.class);

    private final SchedulerClient scheduler;
    private final PreparedFiles files;
    private final LeftOvers leftOvers;
    private final TransactionOperations together;
    private final Clock clock;

    HandoutQueue(
            @Lazy SchedulerClient scheduler,
            PreparedFiles files,
            LeftOvers leftOvers,
            TransactionOperations together,
            Clock clock) {
        this.scheduler = scheduler;
        this.files = files;
        this.leftOvers = leftOvers;
        this.together = together;
        this.clock = clock;
    }

    /** Has a file prepared, about a set or a learner as its kind says; one that is on its way is left to come. */
    public void prepare(long subject, PreparedFile.Kind kind, Locale language) {
        if (files.find(subject, kind, language).filter(PreparedFile::isWaiting).isPresent()) {
            return;
        }
        Optional<String> letGo = Optional.ofNullable(together.execute(step -> {
                    PreparedFiles.Asked asked = files.ask(subject, kind, language);
                    scheduler.scheduleIfNotExists(PREPARE.instance(Long.toString(asked.id()))
                            .data(asked.id())
                            .priority(Turns.HANDOUT)
                            .scheduledTo(clock.instant()));
                    return asked.letGo();
                }))
                .orElseThrow();
        try {
            leftOvers.clear(letGo.stream().toList());
        } catch (IOException unreachable) {
            LOG.warn("an earlier prepared file is left to the sweep of the scan store", unreachable);
        }
    }
}
