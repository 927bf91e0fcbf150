package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.function.Consumer;

/** A shelf on which everything that is laid down is encrypted; its names are still those of the contents themselves. */
final class EncryptedShelf implements ScanShelf {

    private final ScanShelf shelf;
    private final ContentCipher cipher;

    EncryptedShelf(ScanShelf shelf, ScanKey key) {
        this.shelf = shelf;
        this.cipher = new ContentCipher(key);
    }

    @Override
    public void lay(String name, Path content) throws IOException {
        Path encrypted = Files.createTempFile("wallplate-encrypted-", ".part");
        try {
            try (InputStream plain = Files.newInputStream(content);
                    OutputStream out = Files.newOutputStream(encrypted)) {
                cipher.encrypt(name, plain, out);
            }
            shelf.lay(name, encrypted);
        } finally {
            Files.deleteIfExists(encrypted);
        }
    }

    @Override
    public InputStream open(String name) throws IOException {
        InputStream kept = shelf.open(name);
        try {
            return cipher.decrypt(name, kept);
        } catch (IOException broken) {
            kept.close();
            throw broken;
        }
    }

    @Override
    public void delete(String name) throws IOException {
        shelf.delete(name);
    }

    @Override
    public void forEachLaidBefore(Instant moment, Consumer<String> visitor) throws IOException {
        shelf.forEachLaidBefore(moment, visitor);
    }

    @Override
    public void check() throws IOException {
        shelf.check();
    }
}
