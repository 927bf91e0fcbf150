package wallplate.jobs;

import java.time.Duration;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import org.springframework.stereotype.Component;

/**
 * Has reading give way to pages where one process does both: somebody waits for a page, nobody for the next sheet of a pile.
 *
 * <p>Before a job is begun it is waited until few pages are being made, but not for ever, so that reading goes on however
 * busy the pages are. A worker makes no pages and never waits.
 */
@Component
public class PagesFirst {

    /** So many pages at once leave room enough: two for each core. */
    private static final int FEW = 2 * Runtime.getRuntime().availableProcessors();

    private static final Duration LONGEST_WAIT = Duration.ofSeconds(10);

    private final int few;
    private final Duration longestWait;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition room = lock.newCondition();
    private int pages;

    PagesFirst() {
        this(FEW, LONGEST_WAIT);
    }

    /** @param few how many pages at once leave room for reading */
    PagesFirst(int few, Duration longestWait) {
        this.few = few;
        this.longestWait = longestWait;
    }

    /** Says that a page is being made. */
    public void begin() {
        lock.lock();
        try {
            pages++;
        } finally {
            lock.unlock();
        }
    }

    /** Says that a page is done. */
    public void end() {
        lock.lock();
        try {
            pages--;
            room.signalAll();
        } finally {
            lock.unlock();
        }
    }

    /**
     * Waits until few pages are being made, at most for a while.
     *
     * @return whether there is room
     */
    boolean awaitRoom() {
        long left = longestWait.toNanos();
        lock.lock();
        try {
            while (pages > few && left > 0) {
                left = room.awaitNanos(left);
            }
            return pages <= few;
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            return false;
        } finally {
            lock.unlock();
        }
    }
}
