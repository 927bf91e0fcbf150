package wallplate.jobs;

import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.Schedules;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import wallplate.handouts.FeedbackFiles;
import wallplate.handouts.PreparedFile;
import wallplate.handouts.PreparedFiles;
import wallplate.handouts.Preparing;
import wallplate.privacy.LearnerExport;
import wallplate.privacy.LeftOvers;

/** Files for handing out as work of the same workers, before sheets, because somebody waits for them. */
@Configuration(proxyBeanMethods = false)
class HandoutJobs {

    private static final Duration FORGET_EVERY = Duration.ofHours(1);
    private static final Duration KEPT_FOR = Duration.ofDays(1);

    @Bean
    OneTimeTask<Long> prepareFile(
            FeedbackFiles feedback,
            LearnerExport export,
            Preparing preparing,
            PreparedFiles files,
            InHand inHand,
            PagesFirst pages) {
        ReadingJobs.Work make = id -> {
            PreparedFile wanted = files.find(id).filter(PreparedFile::isWaiting).orElse(null);
            if (wanted == null) {
                return;
            }
            if (wanted.kind().isAboutALearner()) {
                LearnerExport.Progress progress = (done, sheets) -> files.progress(id, done, sheets);
                preparing.make(wanted, "", out -> export.write(wanted.subject(), wanted.locale(), progress, out));
            } else {
                feedback.make(wanted);
            }
        };
        return ReadingJobs.oneTime(
                HandoutQueue.PREPARE.getTaskName(), inHand, pages, make, new GrowingWait((id, reason) -> files.failed(id)));
    }

    @Bean
    RecurringTask<Void> forgetPreparedFiles(PreparedFiles files, LeftOvers leftOvers, Clock clock) {
        return Tasks.recurring("forget-prepared-files", Schedules.fixedDelay(FORGET_EVERY))
                .execute((instance, context) -> {
                    try {
                        leftOvers.clear(files.removeBefore(clock.instant().minus(KEPT_FOR)));
                    } catch (IOException broken) {
                        throw new UncheckedIOException(broken);
                    }
                });
    }
}
