package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import wallplate.records.ScanStore;

/** Names content by what is in it and lays it on the shelf that the settings choose. */
@Component
class HashedScanStore implements ScanStore {

    private static final Pattern NAME = Pattern.compile("[0-9a-f]{64}");

    private final ScanShelf shelf;

    HashedScanStore(ScanShelf shelf) {
        this.shelf = shelf;
    }

    @Override
    public Kept put(InputStream content) throws IOException {
        Path arriving = Files.createTempFile("wallplate-arriving-", ".part");
        try {
            MessageDigest digest = sha256();
            long size;
            try (OutputStream out = Files.newOutputStream(arriving);
                    InputStream in = new DigestInputStream(content, digest)) {
                size = in.transferTo(out);
            }
            String name = HexFormat.of().formatHex(digest.digest());
            shelf.lay(name, arriving);
            return new Kept(name, size);
        } finally {
            Files.deleteIfExists(arriving);
        }
    }

    @Override
    public InputStream open(String name) throws IOException {
        return shelf.open(checked(name));
    }

    @Override
    public void copyTo(String name, Path file) throws IOException {
        try (InputStream content = open(name)) {
            Files.copy(content, file);
        }
    }

    @Override
    public void delete(String name) throws IOException {
        shelf.delete(checked(name));
    }

    @Override
    public void forEachPutBefore(Instant moment, Consumer<String> visitor) throws IOException {
        shelf.forEachLaidBefore(moment, name -> {
            if (NAME.matcher(name).matches()) {
                visitor.accept(name);
            }
        });
    }

    @Override
    public void check() throws IOException {
        shelf.check();
    }

    private static String checked(String name) {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("a name in the scan store is 64 hexadecimal digits, not " + name);
        }
        return name;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }
}
