package wallplate.web.learner;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;
import wallplate.task.DrawingTask;

/** Assesses a learner's photograph while the learner waits; neither the picture nor the result is kept. */
@Component
class SelfCheck {

    /** More at once would take each other's processor and memory. */
    private static final int MOST_AT_ONCE = 2;

    private static final int LONGEST_WAIT_SECONDS = 30;

    private final Semaphore room = new Semaphore(MOST_AT_ONCE, true);

    /** The first page of what was sent, with its advice in a language; empty where so many are checking that there was no room in time. */
    Optional<AssessedSheet> assess(String name, byte[] content, DrawingTask task, Locale language)
            throws IOException {
        if (!hasRoom()) {
            return Optional.empty();
        }
        try {
            AtomicReference<ScanPage> first = new AtomicReference<>();
            ScanFile.forEachPage(name, content, page -> first.compareAndSet(null, page));
            return Optional.ofNullable(first.get()).map(page -> new Assessor(language).assess(page, task));
        } finally {
            room.release();
        }
    }

    private boolean hasRoom() {
        try {
            return room.tryAcquire(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
