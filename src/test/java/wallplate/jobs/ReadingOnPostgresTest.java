package wallplate.jobs;

import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The same on PostgreSQL. */
class ReadingOnPostgresTest extends ReadingTest {

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "reading");
    }
}
