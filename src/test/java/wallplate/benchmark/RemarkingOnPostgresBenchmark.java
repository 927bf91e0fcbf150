package wallplate.benchmark;

import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.records.PostgresServer;

/** The same on PostgreSQL, whose own processor time is not in the figure: look at the clock's, too. */
class RemarkingOnPostgresBenchmark extends RemarkingBenchmark {

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "remarkingbenchmark");
    }
}
