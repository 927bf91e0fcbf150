package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.boot.config.DbSchedulerCustomizer;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.boot.env.YamlPropertySourceLoader;
import org.springframework.core.env.PropertySource;
import org.springframework.core.io.ClassPathResource;

/** How the scheduler is told of the database that it works on. */
class StartTest {

    @Test
    void saysHowTheQueueIsKeptWhereTheSchedulerDoesNotKnowTheDatabase() {
        DbSchedulerCustomizer settings =
                new Start().schedulerSettings(new ProcessName(), "jdbc:h2:mem:start;MODE=PostgreSQL");

        assertThat(settings.jdbcCustomization().orElseThrow().getName()).isEqualTo("Default");
    }

    /** Else H2 closes it when a process is told to end, before a sheet in hand is handed back, and the log fills with errors. */
    @Test
    void leavesTheDatabaseOpenUntilTheWorkHasEnded() throws IOException {
        List<PropertySource<?>> settings =
                new YamlPropertySourceLoader().load("settings", new ClassPathResource("application.yaml"));

        assertThat(settings.get(0).getProperty("spring.datasource.url").toString()).contains(";DB_CLOSE_ON_EXIT=FALSE");
    }

    /** PostgreSQL has ways of its own to take a job, which the scheduler knows. */
    @Test
    void leavesPostgresToTheScheduler() {
        DbSchedulerCustomizer settings =
                new Start().schedulerSettings(new ProcessName(), "jdbc:postgresql://localhost/wallplate");

        assertThat(settings.jdbcCustomization()).isEmpty();
    }
}
