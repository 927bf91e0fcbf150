package wallplate.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Clock;
import java.util.Map;
import javax.sql.DataSource;
import org.springframework.beans.BeansException;
import org.springframework.boot.Banner;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceTransactionManagerAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcClientAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcTemplateAutoConfiguration;
import org.springframework.boot.transaction.autoconfigure.TransactionAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import wallplate.audit.AuditTrail;
import wallplate.records.AtRest;
import wallplate.records.ScanStore;

/**
 * Database and scan store of an installation, by the settings of the application itself, without its web server and its
 * background work.
 */
public final class Installation {

    /** The kind of file that a backup is, where it lies encrypted. */
    private static final String BACKUP = "backup";

    private Installation() {}

    /** An installation that is open. */
    public record Opened(DataSource database, ScanStore store, AtRest atRest, AuditTrail trail, Clock clock) {

        public Backup backup() {
            return new Backup(database, store, clock);
        }

        public Restore restore() {
            return new Restore(database, store, clock);
        }

        /** What is written to it lies in the other stream as a backup of this installation is kept. */
        public OutputStream keepingBackup(OutputStream out) throws IOException {
            return atRest.keeping(BACKUP, out);
        }

        /** A backup as it was written, encrypted or not. */
        public InputStream keptBackup(InputStream in) throws IOException {
            return atRest.kept(BACKUP, in);
        }
    }

    /** What is done with an installation. */
    @FunctionalInterface
    public interface Work {
        Contents with(Opened installation) throws IOException;
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
            return work.with(new Opened(
                    context.getBean(DataSource.class),
                    context.getBean(ScanStore.class),
                    context.getBean(AtRest.class),
                    context.getBean(AuditTrail.class),
                    context.getBean(Clock.class)));
        } catch (BeansException broken) {
            throw new BackupRefused("Database or scan store cannot be opened: " + broken.getMessage(), broken);
        }
    }

    /** Only these parts of the application. */
    @ImportAutoConfiguration({
        DataSourceAutoConfiguration.class,
        DataSourceTransactionManagerAutoConfiguration.class,
        TransactionAutoConfiguration.class,
        JdbcTemplateAutoConfiguration.class,
        JdbcClientAutoConfiguration.class
    })
    @ComponentScan({"wallplate.records.storage", "wallplate.audit.jdbc"})
    static class Parts {

        @Bean
        static Clock clock() {
            return Clock.systemUTC();
        }
    }
}
