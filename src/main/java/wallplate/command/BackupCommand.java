package wallplate.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Unmatched;
import wallplate.backup.BackupRefused;
import wallplate.backup.Contents;
import wallplate.backup.Installation;

/** Writes everything that an installation keeps into one file. */
@Command(
        name = "backup",
        description = "Writes every table and every scan into one file. Settings like --spring.datasource.url=... may follow.")
final class BackupCommand implements Callable<Integer> {

    private static final int WRITTEN = 0;
    private static final int REFUSED = 2;

    private final PrintWriter errors;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "The file to write; it must not exist yet.")
    private @Nullable Path out;

    @Unmatched
    private List<String> settings = new ArrayList<>();

    BackupCommand(PrintWriter errors) {
        this.errors = errors;
    }

    @Override
    public Integer call() {
        Path file = java.util.Objects.requireNonNull(out).toAbsolutePath().normalize();
        if (Files.exists(file)) {
            errors.println(file + " is there already. Choose another name.");
            return REFUSED;
        }
        try {
            Path part = Files.createTempFile(file.getParent(), "wallplate-backup-", ".part");
            try {
                Contents contents = Installation.open(settings.toArray(String[]::new), installation -> {
                    try (OutputStream stream = installation.keepingBackup(Files.newOutputStream(part))) {
                        return told(installation, installation.backup().write(stream));
                    }
                });
                // Under its name only when it is whole.
                Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
                errors.println(contents.rows() + " rows of " + contents.tables().size() + " tables and "
                        + contents.contents() + " scans and pictures are in " + file + ".");
                return WRITTEN;
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (BackupRefused refused) {
            errors.println(refused.getMessage());
        } catch (IOException broken) {
            errors.println("The backup cannot be written: " + broken.getMessage());
        }
        return REFUSED;
    }

    /** Everything was handed out: the trail says so. */
    private static Contents told(Installation.Opened installation, Contents contents) {
        installation
                .trail()
                .append(
                        WallplateCommand.PERSON,
                        "backup-taken %d %d".formatted(contents.rows(), contents.contents()),
                        "/");
        return contents;
    }
}
