package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalTime;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import wallplate.audit.AuditTrail;
import wallplate.privacy.Retention;

/** Takes away every night what is over its time. */
@Configuration(proxyBeanMethods = false)
class PrivacyJobs {

    /** When few people work; the time of the machine's own zone. */
    private static final LocalTime AT_NIGHT = LocalTime.of(2, 30);

    @Bean
    RecurringTask<Void> takeAwayOverdue(Retention retention) {
        return Tasks.recurring("take-away-overdue", Schedules.daily(AT_NIGHT)).execute((instance, context) -> {
            try {
                retention.run(AuditTrail.THE_PROGRAM);
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
        });
    }
}
