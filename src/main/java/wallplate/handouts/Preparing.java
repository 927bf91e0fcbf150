package wallplate.handouts;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;

/** Lays a prepared file into the store, where it is there for all servers, and says that it is ready. */
@Component
public class Preparing {

    private final PreparedFiles files;
    private final ScanStore store;

    Preparing(PreparedFiles files, ScanStore store) {
        this.files = files;
        this.store = store;
    }

    /** What is in a file. */
    public interface Content {
        void write(OutputStream out) throws IOException;
    }

    /**
     * Makes a file; on the way it lies on the disk of this machine.
     *
     * @param state what the file shows, taken before its first sheet is read
     * @throws IOException where the store did not give or take what was asked
     */
    public void make(PreparedFile wanted, String state, Content content) throws IOException {
        Path made = Files.createTempFile("wallplate-prepared-", "");
        try {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(made))) {
                content.write(out);
            }
            try (InputStream finished = Files.newInputStream(made)) {
                ScanStore.Kept kept = store.put(finished);
                files.ready(wanted.id(), state, kept.name(), kept.sizeBytes());
            }
        } finally {
            Files.deleteIfExists(made);
        }
    }
}
