package wallplate.web.sets;

import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;

/**
 * Files that arrive in parts, so that after a lost line an upload goes on where it stood.
 *
 * <p>The parts lie in a folder of this process until the file is whole. What has not grown for two hours is thrown away;
 * after a restart the browser is told that nothing is here and sends the file from its start.
 */
@Component
class PartedUploads {

    private static final Duration KEPT_FOR = Duration.ofHours(2);

    private final Clock clock;
    private final Map<Key, Upload> open = new ConcurrentHashMap<>();
    private final Map<Key, Ended> ended = new ConcurrentHashMap<>();
    private Optional<Path> folder = Optional.empty();

    PartedUploads(Clock clock) {
        this.clock = clock;
    }

    /** One file on its way to one class set; the browser chooses its name. */
    record Key(long classSetId, String upload) {}

    private record Ended(PartAnswer answer, Instant at) {}

    /** The answer of an upload that has come to its end, for a browser that did not hear it. */
    Optional<PartAnswer> answerOf(Key key) {
        return Optional.ofNullable(ended.get(key)).map(Ended::answer);
    }

    void end(Key key, PartAnswer answer) throws IOException {
        Upload upload = open.remove(key);
        if (upload != null) {
            upload.delete();
        }
        ended.put(key, new Ended(answer, clock.instant()));
    }

    long received(Key key) {
        Upload upload = open.get(key);
        return upload == null ? 0 : upload.received();
    }

    /**
     * Adds a part where it follows on what is here, and else changes nothing.
     *
     * @return the file as far as it has come
     */
    Path add(Key key, long offset, InputStream part) throws IOException {
        throwOldAway();
        Path file = folder().resolve(key.classSetId() + "-" + key.upload());
        Upload upload = open.computeIfAbsent(key, absent -> new Upload(file, clock));
        upload.add(offset, part);
        return file;
    }

    private void throwOldAway() throws IOException {
        Instant oldest = clock.instant().minus(KEPT_FOR);
        ended.values().removeIf(answer -> answer.at().isBefore(oldest));
        for (Map.Entry<Key, Upload> entry : open.entrySet()) {
            if (entry.getValue().lastGrew().isBefore(oldest) && open.remove(entry.getKey(), entry.getValue())) {
                entry.getValue().delete();
            }
        }
    }

    private synchronized Path folder() throws IOException {
        if (folder.isEmpty()) {
            folder = Optional.of(Files.createTempDirectory("wallplate-uploads-"));
        }
        return folder.get();
    }

    @PreDestroy
    synchronized void throwAllAway() throws IOException {
        if (folder.isPresent()) {
            FileSystemUtils.deleteRecursively(folder.get());
        }
    }

    /** A file that is not whole yet. */
    private static final class Upload {

        private final Path file;
        private final Clock clock;
        private long received;
        private Instant lastGrew;

        Upload(Path file, Clock clock) {
            this.file = file;
            this.clock = clock;
            this.lastGrew = clock.instant();
        }

        synchronized long received() {
            return received;
        }

        synchronized Instant lastGrew() {
            return lastGrew;
        }

        synchronized void add(long offset, InputStream part) throws IOException {
            if (offset != received) {
                return;
            }
            try (OutputStream out = Files.newOutputStream(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
                part.transferTo(out);
            }
            received = Files.size(file);
            lastGrew = clock.instant();
        }

        synchronized void delete() throws IOException {
            Files.deleteIfExists(file);
        }
    }
}
