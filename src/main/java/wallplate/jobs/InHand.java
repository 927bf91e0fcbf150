package wallplate.jobs;

import jakarta.annotation.PreDestroy;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongToIntFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import wallplate.records.Readings;

/**
 * The sheets that this process is reading at the moment.
 *
 * <p>Only a process that was killed leaves a sheet begun and never ended, and that is how a sheet is known that kills. So a
 * process that lives gives back what it does not finish, and waits with that until the database can be reached again.
 */
@Component
class InHand {

    private static final Logger LOG = LoggerFactory.getLogger(InHand.class);
    private static final Duration LOOK_AGAIN_AFTER = Duration.ofSeconds(1);

    private final Readings readings;
    private final QueueTable table;
    private final ProcessName name;
    private final Set<Long> sheets = ConcurrentHashMap.newKeySet();
    private volatile boolean hasWorked;
    private boolean handedAllBack;

    InHand(Readings readings, QueueTable table, ProcessName name) {
        this.readings = readings;
        this.table = table;
        this.name = name;
    }

    /** Says that this process has begun to take jobs. */
    void beginWork() {
        hasWorked = true;
    }

    /**
     * Takes a sheet in hand by the step that says so in the records. Both are done before everything is handed back or not at
     * all, so that no sheet is begun which nobody hands back.
     *
     * @param beginning says in the records that the sheet is begun; returns the number of this attempt
     * @throws IllegalStateException where this process is ending and has handed everything back
     */
    synchronized int take(long sheetId, LongToIntFunction beginning) {
        if (handedAllBack) {
            throw new IllegalStateException("sheet %d is not begun, because this process is ending".formatted(sheetId));
        }
        int attempt = beginning.applyAsInt(sheetId);
        sheets.add(sheetId);
        return attempt;
    }

    void done(long sheetId) {
        sheets.remove(sheetId);
    }

    /** Lets a sheet wait again; returns when that is written down, or when the process ends. */
    void handBack(long sheetId) {
        while (true) {
            try {
                readings.handBack(sheetId);
                sheets.remove(sheetId);
                return;
            } catch (DataAccessException | TransactionException unreachable) {
                LOG.warn("the database cannot be reached to hand sheet {} back: {}", sheetId, unreachable.getMessage());
            }
            try {
                Thread.sleep(LOOK_AGAIN_AFTER.toMillis());
            } catch (InterruptedException stopping) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    /** Runs after the scheduler has stopped and waited for what was nearly done. */
    @PreDestroy
    synchronized void handAllBack() {
        handedAllBack = true;
        if (!hasWorked) {
            return;
        }
        try {
            sheets.forEach(readings::handBack);
            int jobs = table.giveBack(name.getName());
            if (jobs > 0) {
                LOG.info("handed {} unfinished jobs back", jobs);
            }
        } catch (DataAccessException | TransactionException unreachable) {
            LOG.warn("unfinished jobs could not be handed back; others take them over when no sign of life comes", unreachable);
        }
    }
}
