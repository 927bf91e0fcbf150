package wallplate.command;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import wallplate.audit.AuditCheck;

/** Checks the audit trail of a database without starting the application. */
@Command(name = "verify-audit", description = "Checks that the audit trail is still what was written.")
final class VerifyAuditCommand implements Callable<Integer> {

    static final int BROKEN = 3;
    static final int NOT_CHECKED = 2;

    /** As the application has it where no database is set; one that is not there is not made. */
    private static final String OWN_DATABASE = "jdbc:h2:file:./data/wallplate;IFEXISTS=TRUE;MODE=PostgreSQL;"
            + "DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";

    private final PrintWriter said;

    @Option(
            names = "--url",
            defaultValue = OWN_DATABASE,
            description = "JDBC address of the database, as in spring.datasource.url; else that in ./data.")
    private String url = OWN_DATABASE;

    @Option(names = "--user", defaultValue = "wallplate", description = "Its user: ${DEFAULT-VALUE}.")
    private String user = "wallplate";

    @Option(
            names = "--password",
            defaultValue = "${env:WALLPLATE_PASSWORD:-}",
            description = "Its password; better from the environment, as WALLPLATE_PASSWORD.")
    private String password = "";

    @Option(names = "--known", description = "A last hash that was noted earlier: it must be in the trail.")
    private @Nullable String known;

    VerifyAuditCommand(PrintWriter said) {
        this.said = said;
    }

    @Override
    public Integer call() {
        try (Connection database = DriverManager.getConnection(url, user, password)) {
            return say(AuditCheck.of(database, Optional.ofNullable(known)));
        } catch (SQLException unreachable) {
            said.println("The trail cannot be read: " + unreachable.getMessage());
            return NOT_CHECKED;
        }
    }

    private int say(AuditCheck check) {
        if (check instanceof AuditCheck.Broken broken) {
            said.println("The trail does not hold at entry " + broken.number() + ": " + broken.because() + ".");
            return BROKEN;
        }
        AuditCheck.Sound sound = (AuditCheck.Sound) check;
        if (sound.from() > 1) {
            said.println("Entries before number " + sound.from() + " were over their time and are no longer kept.");
        }
        said.println("The trail holds up to entry " + sound.entries() + ". Note the last hash: " + sound.lastHash());
        return 0;
    }
}
