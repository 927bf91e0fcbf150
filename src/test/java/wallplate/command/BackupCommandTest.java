package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The two commands on databases in files, as a small school has them. */
class BackupCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    @BeforeEach
    void anInstallationWithOneClass() throws SQLException {
        Flyway.configure()
                .dataSource(url("old"), "wallplate", "")
                .locations("classpath:db/migration")
                .load()
                .migrate();
        try (Connection database = DriverManager.getConnection(url("old"), "wallplate", "");
                var statement = database.createStatement()) {
            statement.execute("insert into school_classes (name, created_at) values ('11B', current_timestamp)");
        }
    }

    @Test
    void backsUpAndRestoresByOneCommandEach() throws SQLException {
        Path file = folder.resolve("wallplate.backup");

        assertThat(run("old", "backup", "--out", file.toString())).as(said.toString()).isZero();
        assertThat(run("new", "restore", file.toString())).as(said.toString()).isZero();

        assertThat(text("new", "select name from school_classes")).isEqualTo("11B");
        assertThat(run("new", "restore", file.toString())).isEqualTo(2);
        assertThat(run("old", "backup", "--out", file.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("not empty", "is there already");
    }

    @Test
    void saysThatThereIsNoSuchFile() {
        assertThat(run("other", "restore", folder.resolve("none").toString())).isEqualTo(2);
        assertThat(said.toString()).contains("There is no file");
    }

    @Test
    void leavesNoHalfFileWhereNothingCanBeBackedUp() throws IOException {
        Path file = folder.resolve("empty.backup");

        assertThat(run("empty", "backup", "--out", file.toString())).isEqualTo(2);

        assertThat(said.toString()).contains("no tables");
        try (var files = Files.list(folder)) {
            assertThat(files.map(path -> path.getFileName().toString())).noneMatch(name -> name.contains("backup"));
        }
    }

    @Test
    void encryptsABackupByTheKeyOfTheScansAndRestoresItOnlyWithThatKey() throws Exception {
        Path key = Files.writeString(folder.resolve("key"), "0f".repeat(32));
        Path other = Files.writeString(folder.resolve("other-key"), "1e".repeat(32));
        Path file = folder.resolve("wallplate.backup");

        assertThat(run("old", "backup", "--out", file.toString(), keyed(key))).as(said.toString()).isZero();

        assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
                .doesNotContain("contents.json", "school_classes", "11B");
        assertThat(run("keyless", "restore", file.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("wallplate.scans-key-file");
        assertThat(run("other", "restore", file.toString(), keyed(other))).isEqualTo(2);
        assertThat(run("new", "restore", file.toString(), keyed(key))).as(said.toString()).isZero();
        assertThat(text("new", "select name from school_classes")).isEqualTo("11B");
    }

    private static String keyed(Path key) {
        return "--wallplate.scans-key-file=" + key;
    }

    @Test
    void namesTheFileAndTheMomentAsAPersonWould() throws Exception {
        Path file = folder.resolve("wallplate.backup");

        run("old", "backup", "--out", folder.resolve("no-folder/../wallplate.backup").toString());
        run("new", "restore", file.toString());

        assertThat(said.toString())
                .contains("are in " + file.toAbsolutePath().normalize() + ".")
                .containsPattern("as they were on \\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ\\.");
    }

    @Test
    void writesBothToTheAuditTrail() throws SQLException {
        Path file = folder.resolve("wallplate.backup");
        run("old", "backup", "--out", file.toString());
        run("new", "restore", file.toString());

        assertThat(text("old", "select act from audit_entries")).matches("backup-taken \\d+ 0");
        assertThat(text("new", "select act from audit_entries")).matches("backup-restored \\d+ 0");
    }

    /** As a process, because only there the log is switched off. */
    @Test
    void saysItsOneLineAndNothingElse() throws IOException, InterruptedException {
        Path file = folder.resolve("wallplate.backup");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                "wallplate.Wallplate"));
        command.addAll(List.of(arguments("old", "backup", "--out", file.toString())));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String all = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).as(all).isZero();
        assertThat(all.lines()).singleElement().asString().endsWith(" are in " + file + ".");
    }

    private int run(String database, String... arguments) {
        return CommandLine.run(new PrintWriter(said, true), arguments(database, arguments));
    }

    private String[] arguments(String database, String... arguments) {
        return Stream.concat(
                        Arrays.stream(arguments),
                        Stream.of(
                                "--spring.datasource.url=" + url(database),
                                "--spring.datasource.username=wallplate",
                                "--spring.datasource.password=",
                                "--wallplate.scans=" + folder.resolve(database + "-scans")))
                .toArray(String[]::new);
    }

    private String text(String database, String query) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url(database), "wallplate", "");
                var statement = connection.createStatement();
                var row = statement.executeQuery(query)) {
            row.next();
            return row.getString(1);
        }
    }

    private String url(String name) {
        return "jdbc:h2:file:" + folder.resolve(name)
                + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";
    }
}
