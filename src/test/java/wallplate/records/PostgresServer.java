package wallplate.records;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.springframework.test.context.DynamicPropertyRegistry;

/** One real PostgreSQL server for all tests of a run; each asks for a database of its own. */
public final class PostgresServer {

    private static final String USER = "postgres";

    private PostgresServer() {}

    /** Started when it is first asked for, stopped with the tests. */
    private static final class Running {
        static final EmbeddedPostgres SERVER = start();

        private static EmbeddedPostgres start() {
            try {
                return EmbeddedPostgres.builder().start();
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
        EmbeddedPostgres server = Running.SERVER;
        try (var connection = server.getPostgresDatabase().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("create database " + database);
        } catch (SQLException broken) {
            throw new IllegalStateException("no database " + database + " on the PostgreSQL server for the tests", broken);
        }
        properties.add("spring.datasource.url", () -> server.getJdbcUrl(USER, database));
        properties.add("spring.datasource.username", () -> USER);
        properties.add("spring.datasource.password", () -> "");
    }
}
