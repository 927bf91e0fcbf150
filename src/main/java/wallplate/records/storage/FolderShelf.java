package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A folder as shelf: each content is a file, in a sub-folder named by the first two letters of its name.
 *
 * <p>Content is written beside its place, forced to the disk and moved there, so that a name never stands for half of a file.
 */
final class FolderShelf implements ScanShelf {

    private static final String ARRIVING = "arriving-";

    private final Path folder;
    private final Clock clock;

    FolderShelf(Path folder, Clock clock) {
        this.folder = folder;
        this.clock = clock;
    }

    @Override
    public void lay(String name, Path content) throws IOException {
        Path place = place(name);
        FileTime now = FileTime.from(clock.instant());
        if (Files.exists(place)) {
            try {
                Files.setLastModifiedTime(place, now);
                return;
            } catch (NoSuchFileException sweptMeanwhile) {
                // A sweep took it away between the two lines above: it is laid down anew.
            }
        }
        Files.createDirectories(folder);
        Path arriving = Files.createTempFile(folder, ARRIVING, ".part");
        try {
            Files.copy(content, arriving, StandardCopyOption.REPLACE_EXISTING);
            try (FileChannel written = FileChannel.open(arriving, StandardOpenOption.WRITE)) {
                written.force(true);
            }
            Files.setLastModifiedTime(arriving, now);
            move(arriving, place);
        } finally {
            Files.deleteIfExists(arriving);
        }
    }

    private static void move(Path arriving, Path place) throws IOException {
        Files.createDirectories(place.getParent());
        try {
            Files.move(arriving, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException notAtomic) {
            Files.move(arriving, place, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    @Override
    public InputStream open(String name) throws IOException {
        return Files.newInputStream(place(name));
    }

    @Override
    public void delete(String name) throws IOException {
        Files.deleteIfExists(place(name));
    }

    /** What was left half written by a crash goes as well. */
    @Override
    public void forEachLaidBefore(Instant moment, Consumer<String> visitor) throws IOException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder, 2)) {
            for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
                if (Files.getLastModifiedTime(file).toInstant().isAfter(moment)) {
                    continue;
                }
                String name = file.getFileName().toString();
                if (name.startsWith(ARRIVING)) {
                    Files.deleteIfExists(file);
                } else {
                    visitor.accept(name);
                }
            }
        } catch (UncheckedIOException broken) {
            throw broken.getCause();
        }
    }

    @Override
    public void check() throws IOException {
        Files.createDirectories(folder);
        Path trial = Files.createTempFile(folder, ARRIVING, ".part");
        try {
            Files.write(trial, new byte[] {1});
        } finally {
            Files.deleteIfExists(trial);
        }
    }

    private Path place(String name) {
        return folder.resolve(name.substring(0, 2)).resolve(name);
    }
}
