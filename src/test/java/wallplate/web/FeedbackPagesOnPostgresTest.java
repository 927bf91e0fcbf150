package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The same on PostgreSQL. */
class FeedbackPagesOnPostgresTest extends FeedbackPagesTest {

    @Autowired
    private DataSource database;

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "feedback");
    }

    @Test
    void isPostgres() throws SQLException {
        assertThat(PostgresServer.productOf(database)).isEqualTo("PostgreSQL");
    }
}
