package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;

/**
 * The scan store as a folder: each content is a file, in a sub-folder named by the first two letters of its name.
 *
 * <p>Content is written beside its place and moved there, so that a name never stands for half of a file.
 */
@Component
class FolderScanStore implements ScanStore {

    private static final Pattern NAME = Pattern.compile("[0-9a-f]{64}");

    private final Path folder;

    FolderScanStore(@Value("${wallplate.scans}") Path folder) {
        this.folder = folder;
    }

    @Override
    public Kept put(InputStream content) throws IOException {
        Files.createDirectories(folder);
        Path arriving = Files.createTempFile(folder, "arriving-", ".part");
        try {
            MessageDigest digest = sha256();
            long size;
            try (OutputStream out = Files.newOutputStream(arriving);
                    InputStream in = new DigestInputStream(content, digest)) {
                size = in.transferTo(out);
            }
            String name = HexFormat.of().formatHex(digest.digest());
            moveIntoPlace(arriving, place(name));
            return new Kept(name, size);
        } finally {
            Files.deleteIfExists(arriving);
        }
    }

    @Override
    public InputStream open(String name) throws IOException {
        return Files.newInputStream(place(name));
    }

    @Override
    public void copyTo(String name, Path file) throws IOException {
        Files.copy(place(name), file);
    }

    private static void moveIntoPlace(Path arriving, Path place) throws IOException {
        if (Files.exists(place)) {
            return;
        }
        Files.createDirectories(place.getParent());
        try {
            Files.move(arriving, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException notAtomic) {
            Files.move(arriving, place, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private Path place(String name) {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("a name in the scan store is 64 hexadecimal digits, not " + name);
        }
        return folder.resolve(name.substring(0, 2)).resolve(name);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }
}
