package wallplate.backup;

import java.io.IOException;
import java.time.Clock;
import java.util.Map;
import javax.sql.DataSource;
import org.springframework.beans.BeansException;
import org.springframework.boot.Banner;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import wallplate.records.ScanStore;

/**
 * Database and scan store of an installation, by the settings of the application itself, without its web server and its
 * background work.
 */
public final class Installation {

    private Installation() {}

    /** What is done with an installation. */
    @FunctionalInterface
    public interface Work {
        Contents with(DataSource database, ScanStore store, Clock clock) throws IOException;
    }

    /**
     * Opens the installation, does the work and closes it.
     *
     * @param settings like {@code --spring.datasource.url=...}, beside those of the environment and of application.yaml
     * @throws BackupRefused where the database or the store cannot be opened
     */
    public static Contents open(String[] settings, Work work) throws IOException {
        try (var context = new SpringApplicationBuilder(Parts.class)
                .web(WebApplicationType.NONE)
                .bannerMode(Banner.Mode.OFF)
                .logStartupInfo(false)
                .properties(Map.of("spring.main.lazy-initialization", "true"))
                .run(settings)) {
            return work.with(
                    context.getBean(DataSource.class), context.getBean(ScanStore.class), context.getBean(Clock.class));
        } catch (BeansException broken) {
            throw new BackupRefused("Database or scan store cannot be opened: " + broken.getMessage(), broken);
        }
    }

    /** Only these parts of the application. */
    @ImportAutoConfiguration(DataSourceAutoConfiguration.class)
    @ComponentScan("wallplate.records.storage")
    static class Parts {

        @Bean
        static Clock clock() {
            return Clock.systemUTC();
        }
    }
}
