package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Consumer;

/**
 * Where named contents lie: a folder, a bucket of an S3-compatible store, or one of them behind something that changes
 * what is laid down and changes it back.
 *
 * <p>A name is 64 hexadecimal digits and stands for one content for ever, so that laying it down again changes nothing but
 * its date.
 */
interface ScanShelf {

    /** Lays a file's content down under a name, all of it or nothing; afterwards its date is now. */
    void lay(String name, Path content) throws IOException;

    /** @throws java.nio.file.NoSuchFileException where nothing has that name */
    InputStream open(String name) throws IOException;

    /** A name that nothing has is no error. */
    void delete(String name) throws IOException;

    /** Visits the name of everything that was laid down before that moment. */
    void forEachLaidBefore(Instant moment, Consumer<String> visitor) throws IOException;

    /** @throws IOException where nothing can be laid down or taken up now */
    void check() throws IOException;
}
