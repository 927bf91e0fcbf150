package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that checks the audit trail, on a database in a file with the entries of two backups. */
class VerifyAuditCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    @BeforeEach
    void twoEntries() {
        Flyway.configure()
                .dataSource(url(), "wallplate", "")
                .locations("classpath:db/migration")
                .load()
                .migrate();
        for (String name : new String[] {"first.backup", "second.backup"}) {
            assertThat(run(
                            "backup",
                            "--out", folder.resolve(name).toString(),
                            "--spring.datasource.url=" + url(),
                            "--spring.datasource.username=wallplate",
                            "--spring.datasource.password=",
                            "--wallplate.scans=" + folder.resolve("scans")))
                    .as(said.toString())
                    .isZero();
        }
    }

    @Test
    void saysUpToWhereTheTrailHoldsAndTheHashToNote() {
        assertThat(verify()).as(said.toString()).isZero();
        Matcher holds = Pattern.compile("holds up to entry 2\\. Note the last hash: ([0-9a-f]{64})").matcher(said.toString());
        assertThat(holds.find()).as(said.toString()).isTrue();
        assertThat(verify("--known", holds.group(1))).isZero();
        assertThat(verify("--known", "f".repeat(64))).isEqualTo(3);
    }

    @Test
    void saysWhereTheTrailWasTamperedWith() throws SQLException {
        try (Connection database = DriverManager.getConnection(url(), "wallplate", "");
                var statement = database.createStatement()) {
            statement.execute("update audit_entries set person = 'another' where number = 2");
        }
        assertThat(verify()).isEqualTo(3);
        assertThat(said.toString()).contains("does not hold at entry 2");
    }

    @Test
    void saysThatADatabaseCannotBeRead() {
        assertThat(run("verify-audit", "--url", "jdbc:h2:file:" + folder.resolve("none") + ";IFEXISTS=TRUE")).isEqualTo(2);
        assertThat(said.toString()).contains("cannot be read");
    }

    @Test
    void looksIntoTheApplicationsOwnDatabaseWhereNoneIsNamed() {
        assertThat(run("verify-audit", "--no-such-option")).isEqualTo(2);
        assertThat(said.toString()).contains("[--url=<url>]").contains("./data");
    }

    private int verify(String... more) {
        String[] all = new String[more.length + 3];
        all[0] = "verify-audit";
        all[1] = "--url";
        all[2] = url();
        System.arraycopy(more, 0, all, 3, more.length);
        return run(all);
    }

    private int run(String... arguments) {
        return CommandLine.run(new PrintWriter(said, true), arguments);
    }

    private String url() {
        return "jdbc:h2:file:" + folder.resolve("school") + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";
    }
}
