package wallplate.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
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

        assertThat(className("new")).isEqualTo("11B");
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

    private int run(String database, String... arguments) {
        String[] all = java.util.stream.Stream.concat(
                        java.util.Arrays.stream(arguments),
                        java.util.stream.Stream.of(
                                "--spring.datasource.url=" + url(database),
                                "--spring.datasource.username=wallplate",
                                "--spring.datasource.password=",
                                "--wallplate.scans=" + folder.resolve(database + "-scans")))
                .toArray(String[]::new);
        return CommandLine.run(new PrintWriter(said, true), all);
    }

    private String className(String database) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url(database), "wallplate", "");
                var statement = connection.createStatement();
                var row = statement.executeQuery("select name from school_classes")) {
            row.next();
            return row.getString(1);
        }
    }

    private String url(String name) {
        return "jdbc:h2:file:" + folder.resolve(name)
                + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";
    }
}
