package wallplate.records;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.DriverManager;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One real PostgreSQL server for all tests of a run; each asks for a database of its own.
 *
 * <p>Where a Docker engine answers it is a container of the image that {@code docker-compose.yml} names, else the server that the
 * build brings along, so that no test on PostgreSQL is ever skipped. {@code -Dwallplate.postgres=embedded} asks for the latter.
 */
public final class PostgresServer {

    private static final String USER = "postgres";
    private static final String PASSWORD = "for-tests";
    private static final String IMAGE = "postgres:17";

    private PostgresServer() {}

    /** Where a server is, up to the name of the database. */
    private record Address(String beforeName) {

        String of(String database) {
            return beforeName + database;
        }
    }

    /** Started when it is first asked for, stopped with the tests. */
    private static final class Running {
        static final Address SERVER = start();

        private static Address start() {
            return isDockerWanted() ? container() : embedded();
        }

        private static boolean isDockerWanted() {
            return !System.getProperty("wallplate.postgres", "").equals("embedded")
                    && DockerClientFactory.instance().isDockerAvailable();
        }

        /** The library itself takes the container away after the tests. */
        @SuppressWarnings("resource")
        private static Address container() {
            PostgreSQLContainer container = new PostgreSQLContainer(IMAGE)
                    .withUsername(USER)
                    .withPassword(PASSWORD)
                    .withDatabaseName(USER);
            container.start();
            return new Address("jdbc:postgresql://%s:%d/"
                    .formatted(container.getHost(), container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT)));
        }

        private static Address embedded() {
            try {
                EmbeddedPostgres server = EmbeddedPostgres.builder().start();
                return new Address("jdbc:postgresql://localhost:%d/".formatted(server.getPort()));
            } catch (IOException broken) {
                throw new UncheckedIOException("the PostgreSQL server for the tests did not start", broken);
            }
        }
    }

    /** What the server behind the application under test calls itself. */
    public static String productOf(DataSource database) throws SQLException {
        try (var connection = database.getConnection()) {
            return connection.getMetaData().getDatabaseProductName();
        }
    }

    /** Points the application under test at an empty database of that name. */
    public static void use(DynamicPropertyRegistry properties, String database) {
        String address = make(database);
        properties.add("spring.datasource.url", () -> address);
        properties.add("spring.datasource.username", () -> USER);
        properties.add("spring.datasource.password", () -> PASSWORD);
    }

    /** Makes an empty database of that name and returns its address. */
    public static String make(String database) {
        try (var connection = DriverManager.getConnection(Running.SERVER.of(USER), USER, PASSWORD);
                var statement = connection.createStatement()) {
            statement.execute("create database " + database);
        } catch (SQLException broken) {
            throw new IllegalStateException("no database " + database + " on the PostgreSQL server for the tests", broken);
        }
        return Running.SERVER.of(database);
    }

    public static String user() {
        return USER;
    }

    public static String password() {
        return PASSWORD;
    }
}
