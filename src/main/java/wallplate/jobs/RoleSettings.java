package wallplate.jobs;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.boot.EnvironmentPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.Ordered;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/**
 * Derives from the role and the database what would otherwise have to be set by hand, each time alike.
 *
 * <p>A worker opens no port for pages, and where roles are shared out nobody came to look around. On PostgreSQL jobs are locked while they are fetched (select for update skip
 * locked), so that many workers do not fight for the same; the embedded database has one process only.
 */
final class RoleSettings implements EnvironmentPostProcessor, Ordered {

    /** The port for health and metrics, never that of the pages; a single process on a teacher's machine has none. */
    private static final String WATCHING = "management.server.port";

    private static final String POLLING = "db-scheduler.polling-strategy";

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        Role role = Role.of(environment);
        boolean embedded = environment.getProperty("spring.datasource.url", "").startsWith("jdbc:h2:");
        if (embedded && role != Role.ALL) {
            throw new IllegalArgumentException(
                    "%s=%s needs a database server: set spring.datasource.url to a PostgreSQL database; the embedded database belongs to one process"
                            .formatted(Role.SETTING, environment.getProperty(Role.SETTING)));
        }
        Map<String, Object> derived = new LinkedHashMap<>();
        if (!environment.containsProperty(POLLING)) {
            derived.put(POLLING, embedded ? "fetch" : "lock-and-fetch");
        }
        if (role != Role.ALL) {
            derived.put("wallplate.demonstration.enabled", false);
        }
        if (!environment.containsProperty(WATCHING)) {
            derived.put(WATCHING, role == Role.ALL ? "-1" : "8081");
        }
        if (!role.readsSheets()) {
            derived.put("management.health.db-scheduler.enabled", false);
        }
        if (!role.showsPages()) {
            derived.put("server.port", -1);
        }
        environment.getPropertySources().addFirst(new MapPropertySource("role", derived));
    }

    /** After the settings files have been read. */
    @Override
    public int getOrder() {
        return ConfigDataEnvironmentPostProcessor.ORDER + 10;
    }
}
