package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** The same on PostgreSQL. */
class RecordsOnPostgresTest extends RecordsTest {

    @Autowired
    private DataSource database;

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "records");
    }

    @Test
    void isPostgres() throws SQLException {
        assertThat(PostgresServer.productOf(database)).isEqualTo("PostgreSQL");
    }
}
