package wallplate.operations;

import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** The upgrade on H2. */
class UpgradeTest extends UpgradeOfFirstRelease {

    private static final String SCANS = "target/test-data/upgrade";

    @DynamicPropertySource
    static void firstRelease(DynamicPropertyRegistry properties) {
        String address = "jdbc:h2:mem:upgrade;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH;DB_CLOSE_DELAY=-1";
        fill(address, "wallplate", "", SCANS);
        properties.add("spring.datasource.url", () -> address);
        properties.add("wallplate.scans", () -> SCANS);
    }
}
