package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Duration;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;
import wallplate.assessment.Assessor;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;

/** The kinds of background work, and what happens to work that was left over when the program ended. */
@Configuration(proxyBeanMethods = false)
class ReadingJobs {

    private static final Duration FIRST_WAIT = Duration.ofSeconds(2);
    private static final double WAIT_GROWTH = 3;

    @Bean
    Assessor assessor() {
        return new Assessor();
    }

    @Bean
    OneTimeTask<Long> readFile(FileReading reading) {
        return Tasks.oneTime(ReadingQueue.READ_FILE)
                .onFailure(new FailureHandler.ExponentialBackoffFailureHandler<>(FIRST_WAIT, WAIT_GROWTH))
                .execute((instance, context) -> reading.read(instance.getData()));
    }

    @Bean
    UnfinishedFiles unfinishedFiles(ScanFiles files, ReadingQueue queue) {
        return new UnfinishedFiles(files, queue);
    }

    /** Files whose job was lost, by a crash between keeping the file and queuing it, are queued again at the start. */
    record UnfinishedFiles(ScanFiles files, ReadingQueue queue) {

        @EventListener(ApplicationReadyEvent.class)
        void queueAgain() {
            for (ScanFileEntry file : files.unfinished()) {
                queue.add(file);
            }
        }
    }
}
