package wallplate.records;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;

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
}
