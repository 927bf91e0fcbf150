package wallplate.jobs;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.boot.config.DbSchedulerCustomizer;
import com.github.kagkarlsson.scheduler.boot.config.DbSchedulerStarter;
import com.github.kagkarlsson.scheduler.jdbc.DefaultJdbcCustomization;
import com.github.kagkarlsson.scheduler.jdbc.JdbcCustomization;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;

/** Begins the background work where this process is to do it. */
@Configuration(proxyBeanMethods = false)
class Start {

    @Bean
    DbSchedulerCustomizer schedulerSettings(ProcessName name, @Value("${spring.datasource.url}") String address) {
        return new DbSchedulerCustomizer() {
            @Override
            public Optional<SchedulerName> schedulerName() {
                return Optional.of(name);
            }

            /** The scheduler does not know H2, and warns that it guesses; the queue's times are kept with their zone. */
            @Override
            public Optional<JdbcCustomization> jdbcCustomization() {
                return isH2(address) ? Optional.of(new DefaultJdbcCustomization(false)) : Optional.empty();
            }
        };
    }

    @Bean
    ReadingStart readingStart(
            Scheduler scheduler,
            Role role,
            QueueTable table,
            LostFiles lost,
            @Value("${spring.datasource.url}") String address) {
        return new ReadingStart(scheduler, role, table, lost, isH2(address));
    }

    private static boolean isH2(String address) {
        return address.startsWith("jdbc:h2:");
    }

    /**
     * Takes the place of the scheduler's own starter.
     *
     * @param isAlone whether no other process can use the database; then what is taken was taken by a process that is gone
     */
    record ReadingStart(Scheduler scheduler, Role role, QueueTable table, LostFiles lost, boolean isAlone)
            implements DbSchedulerStarter {

        /** Nothing yet: the program is not ready when the scheduler is made. */
        @Override
        public void doStart() {}

        @EventListener(ApplicationReadyEvent.class)
        void begin() {
            if (!role.readsSheets()) {
                return;
            }
            if (isAlone) {
                table.giveBackAll();
            }
            lost.queueAgain();
            scheduler.start();
        }
    }
}
