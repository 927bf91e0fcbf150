package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.boot.SpringApplication;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

class RoleTest {

    private static final String EMBEDDED = "jdbc:h2:file:./data/wallplate";
    private static final String SERVER = "jdbc:postgresql://database/wallplate";

    @Test
    void doesEverythingWhereNothingIsSaid() {
        StandardEnvironment settings = settings(Map.of("spring.datasource.url", EMBEDDED));

        assertThat(Role.of(settings)).isEqualTo(Role.ALL);
        assertThat(settings.getProperty("db-scheduler.polling-strategy")).isEqualTo("fetch");
        assertThat(settings.getProperty("server.port")).isNull();
    }

    @Test
    void opensNoPortForPagesAsAWorker() {
        StandardEnvironment settings = settings(Map.of(
                "spring.datasource.url", SERVER, "wallplate.role", "worker", "server.port", "8080"));

        assertThat(settings.getProperty("server.port")).isEqualTo("-1");
        assertThat(settings.getProperty("db-scheduler.polling-strategy")).isEqualTo("lock-and-fetch");
    }

    @Test
    void refusesToShareTheEmbeddedDatabase() {
        assertThatThrownBy(() -> settings(Map.of("spring.datasource.url", EMBEDDED, "wallplate.role", "web")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("PostgreSQL");
    }

    @Test
    void namesTheRolesWhereThereIsNoSuchRole() {
        assertThatThrownBy(() -> settings(Map.of("spring.datasource.url", SERVER, "wallplate.role", "boss")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("all, web, worker")
                .hasMessageContaining("boss");
    }

    private static StandardEnvironment settings(Map<String, Object> given) {
        StandardEnvironment environment = new StandardEnvironment();
        environment.getPropertySources().addFirst(new MapPropertySource("given", given));
        new RoleSettings().postProcessEnvironment(environment, new SpringApplication());
        return environment;
    }
}
