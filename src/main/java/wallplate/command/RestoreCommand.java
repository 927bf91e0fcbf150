package wallplate.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Unmatched;
import wallplate.backup.BackupRefused;
import wallplate.backup.Contents;
import wallplate.backup.Installation;

/** Takes a backup back into an empty installation. */
@Command(
        name = "restore",
        description = "Takes a backup back into an empty installation. Settings like --spring.datasource.url=... may follow.")
final class RestoreCommand implements Callable<Integer> {

    private static final int RESTORED = 0;
    private static final int REFUSED = 2;

    private final PrintWriter errors;

    @Parameters(index = "0", paramLabel = "FILE", description = "The backup.")
    private @Nullable Path file;

    @Unmatched
    private List<String> settings = new ArrayList<>();

    RestoreCommand(PrintWriter errors) {
        this.errors = errors;
    }

    @Override
    public Integer call() {
        Path backup = java.util.Objects.requireNonNull(file);
        if (!Files.isReadable(backup)) {
            errors.println("There is no file " + backup + " that can be read.");
            return REFUSED;
        }
        try {
            Contents contents = Installation.open(settings.toArray(String[]::new), installation -> {
                try (InputStream stream = installation.keptBackup(Files.newInputStream(backup))) {
                    Contents restored = installation.restore().read(stream);
                    installation
                            .trail()
                            .append(
                                    WallplateCommand.PERSON,
                                    "backup-restored %d %d".formatted(restored.rows(), restored.contents()),
                                    "/");
                    return restored;
                }
            });
            errors.println(contents.rows() + " rows of " + contents.tables().size() + " tables and " + contents.contents()
                    + " scans and pictures are restored, as they were on " + contents.takenAt() + ".");
            return RESTORED;
        } catch (BackupRefused refused) {
            errors.println(refused.getMessage());
        } catch (IOException broken) {
            errors.println("The backup cannot be read: " + broken.getMessage());
        }
        return REFUSED;
    }
}
