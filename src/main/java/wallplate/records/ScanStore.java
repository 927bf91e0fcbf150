package wallplate.records;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Consumer;

/** Scans and pictures at rest, named by the SHA-256 of what is in them; the same content is kept once. */
public interface ScanStore {

    /** What was put into the store. */
    record Kept(String name, long sizeBytes) {}

    /** Keeps all that the stream gives; when this returns, it is there for good. */
    Kept put(InputStream content) throws IOException;

    /** @throws java.nio.file.NoSuchFileException where nothing has that name */
    InputStream open(String name) throws IOException;

    /** Copies the content into a file, which must not exist yet. */
    void copyTo(String name, Path file) throws IOException;

    /** Takes content out of the store; a name that nothing has is no error. */
    void delete(String name) throws IOException;

    /** Visits the name of everything that was put, or put again, before that moment. */
    void forEachPutBefore(Instant moment, Consumer<String> visitor) throws IOException;

    /** @throws IOException where the store cannot take or give anything now */
    void check() throws IOException;
}
