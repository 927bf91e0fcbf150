package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.boot.config.DbSchedulerCustomizer;
import org.junit.jupiter.api.Test;

/** How the scheduler is told of the database that it works on. */
class StartTest {

    @Test
    void saysHowTheQueueIsKeptWhereTheSchedulerDoesNotKnowTheDatabase() {
        DbSchedulerCustomizer settings =
                new Start().schedulerSettings(new ProcessName(), "jdbc:h2:mem:start;MODE=PostgreSQL");

        assertThat(settings.jdbcCustomization().orElseThrow().getName()).isEqualTo("Default");
    }

    /** PostgreSQL has ways of its own to take a job, which the scheduler knows. */
    @Test
    void leavesPostgresToTheScheduler() {
        DbSchedulerCustomizer settings =
                new Start().schedulerSettings(new ProcessName(), "jdbc:postgresql://localhost/wallplate");

        assertThat(settings.jdbcCustomization()).isEmpty();
    }
}
