package wallplate.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** The same on PostgreSQL. */
class StandingsOnPostgresTest extends StandingsTest {

    @Autowired
    private DataSource dataSource;

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "standings");
    }

    @Test
    void isPostgres() throws SQLException {
        assertThat(PostgresServer.productOf(dataSource)).isEqualTo("PostgreSQL");
    }
}
