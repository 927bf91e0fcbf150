package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Locale;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import wallplate.assessment.Assessor;
import wallplate.records.Readings;
import wallplate.records.Sheets;

/** The kinds of background work. */
@Configuration(proxyBeanMethods = false)
class ReadingJobs {

    private static final Duration LOOK_FOR_LOST_EVERY = Duration.ofMinutes(30);
    private static final Duration SWEEP_EVERY = Duration.ofHours(12);

    @Bean
    Role role(Environment settings) {
        return Role.of(settings);
    }

    @Bean
    Assessor assessor(ReadingMetrics metrics) {
        return new Assessor(Locale.ENGLISH, metrics);
    }

    @Bean
    OneTimeTask<Long> readFile(FileOpening opening, InHand inHand, PagesFirst pages) {
        return oneTime(
                ReadingQueue.READ_FILE.getTaskName(), inHand, pages, opening::open, new GrowingWait(opening::giveUp));
    }

    @Bean
    OneTimeTask<Long> readSheet(
            SheetReading reading, Readings readings, Sheets sheets, InHand inHand, PagesFirst pages, ReadingMetrics metrics) {
        return oneTime(ReadingQueue.READ_SHEET.getTaskName(), inHand, pages, reading::read, new GrowingWait((sheetId, reason) -> {
            sheets.fail(sheetId, reason);
            metrics.setAside();
            readings.fileOf(sheetId).ifPresent(file -> readings.finishWhereRead(file.id()));
        }));
    }

    @Bean
    RecurringTask<Void> findLost(LostFiles lost) {
        return Tasks.recurring("find-lost-files", Schedules.fixedDelay(LOOK_FOR_LOST_EVERY))
                .execute((instance, context) -> lost.queueAgain());
    }

    @Bean
    RecurringTask<Void> sweepStore(StoreSweep sweep) {
        return Tasks.recurring("sweep-store", Schedules.fixedDelay(SWEEP_EVERY))
                .execute((instance, context) -> {
                    try {
                        sweep.sweep();
                    } catch (IOException broken) {
                        throw new UncheckedIOException(broken);
                    }
                });
    }

    /** Work on what a number names. */
    interface Work {
        void on(long number) throws IOException;
    }

    static OneTimeTask<Long> oneTime(
            String name, InHand inHand, PagesFirst pages, Work work, FailureHandler<Long> failure) {
        return Tasks.oneTime(name, Long.class).onFailure(failure).execute((instance, context) -> {
            inHand.beginWork();
            pages.awaitRoom();
            try {
                work.on(instance.getData());
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
        });
    }
}
