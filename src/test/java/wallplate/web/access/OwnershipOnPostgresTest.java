package wallplate.web.access;

import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The same on PostgreSQL. */
class OwnershipOnPostgresTest extends OwnershipTest {

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "ownership");
    }
}
