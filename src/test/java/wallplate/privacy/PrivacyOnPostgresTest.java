package wallplate.privacy;

import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The same on PostgreSQL. */
class PrivacyOnPostgresTest extends PrivacyTest {

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "privacy");
    }
}
