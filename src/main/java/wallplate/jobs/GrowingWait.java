package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.time.Duration;
import java.util.function.BiConsumer;
import org.springframework.dao.DataAccessException;
import org.springframework.transaction.TransactionException;

/**
 * Has a job that failed done again after a wait that grows each time, and gives it up in the end with a reason.
 *
 * <p>What lies outside the program, a store or a database, is given more than an hour to come back. A fault of the program
 * itself is unlikely to go away.
 */
final class GrowingWait implements FailureHandler<Long> {

    private static final Duration FIRST_WAIT = Duration.ofSeconds(2);
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(10);
    private static final int GROWTH = 3;
    private static final int MOST_TRIES_OUTSIDE = 13;
    private static final int MOST_TRIES_INSIDE = 3;

    private final BiConsumer<Long, String> givenUp;

    /** @param givenUp is told the job's number and the reason, a sentence for people */
    GrowingWait(BiConsumer<Long, String> givenUp) {
        this.givenUp = givenUp;
    }

    @Override
    public void onFailure(ExecutionComplete failed, ExecutionOperations<Long> job) {
        Throwable cause = failed.getCause().orElse(null);
        int tries = failed.getExecution().consecutiveFailures + 1;
        if (tries < (isOutside(cause) ? MOST_TRIES_OUTSIDE : MOST_TRIES_INSIDE)) {
            job.reschedule(failed, failed.getTimeDone().plus(waitAfter(tries)));
            return;
        }
        givenUp.accept((Long) failed.getExecution().taskInstance.getData(), reason(cause));
        job.remove();
    }

    /**
     * The wait after a number of tries.
     *
     * @param tries from 1
     */
    static Duration waitAfter(int tries) {
        Duration wait = FIRST_WAIT;
        for (int passed = 1; passed < tries && wait.compareTo(LONGEST_WAIT) < 0; passed++) {
            wait = wait.multipliedBy(GROWTH);
        }
        return wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT;
    }

    private static boolean isOutside(Throwable cause) {
        return (isStore(cause) && !isMissing(cause))
                || cause instanceof DataAccessException
                || cause instanceof TransactionException
                || cause instanceof SQLException;
    }

    private static boolean isStore(Throwable cause) {
        return cause instanceof IOException || cause instanceof UncheckedIOException;
    }

    private static boolean isMissing(Throwable cause) {
        return cause instanceof NoSuchFileException
                || (cause instanceof UncheckedIOException unchecked && unchecked.getCause() instanceof NoSuchFileException);
    }

    private static String reason(Throwable cause) {
        if (isMissing(cause)) {
            return "The scan is no longer where scans are kept. Hand the same file in again, then try this sheet again.";
        }
        if (isStore(cause)) {
            return "The place where scans are kept did not answer or is full. Nothing is lost: try again when it is mended.";
        }
        if (isOutside(cause)) {
            return "The database did not answer for a long time. Nothing is lost: try again when it is mended.";
        }
        return "The program itself failed on this sheet. The scan is kept; the program's log has the details. If it fails"
                + " once more when you try again, save or scan the sheet again and hand that in.";
    }
}
