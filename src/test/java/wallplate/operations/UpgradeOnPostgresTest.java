package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The upgrade on PostgreSQL. */
class UpgradeOnPostgresTest extends UpgradeOfFirstRelease {

    private static final String SCANS = "target/test-data/upgrade-postgres";

    @Autowired
    private DataSource database;

    @DynamicPropertySource
    static void firstRelease(DynamicPropertyRegistry properties) {
        String address = PostgresServer.make("upgrade");
        fill(address, PostgresServer.user(), PostgresServer.password(), SCANS);
        properties.add("wallplate.scans", () -> SCANS);
        properties.add("spring.datasource.url", () -> address);
        properties.add("spring.datasource.username", PostgresServer::user);
        properties.add("spring.datasource.password", PostgresServer::password);
    }

    @Test
    void isPostgres() throws SQLException {
        assertThat(PostgresServer.productOf(database)).isEqualTo("PostgreSQL");
    }
}
