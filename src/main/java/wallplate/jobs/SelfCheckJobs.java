package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Learners' photographs as work of the same workers, before everything else. */
@Configuration(proxyBeanMethods = false)
class SelfCheckJobs {

    private static final Duration FORGET_EVERY = Duration.ofMinutes(1);

    @Bean
    OneTimeTask<Long> readSelfCheck(SelfCheckReading reading, InHand inHand, PagesFirst pages) {
        return ReadingJobs.oneTime(
                SelfCheckQueue.READ.getTaskName(), inHand, pages, reading::read, new GrowingWait(reading::giveUp));
    }

    @Bean
    RecurringTask<Void> forgetSelfChecks(SelfCheckReading reading) {
        return Tasks.recurring("forget-self-checks", Schedules.fixedDelay(FORGET_EVERY))
                .execute((instance, context) -> {
                    try {
                        reading.forget();
                    } catch (IOException broken) {
                        throw new UncheckedIOException(broken);
                    }
                });
    }
}
