package wallplate.records.storage;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PushbackInputStream;
import java.util.Optional;
import org.springframework.stereotype.Component;
import wallplate.records.AtRest;

/** By the key of the scans, where the settings name one. */
@Component
class KeyedAtRest implements AtRest {

    private static final int BYTES_TO_TELL = 8;

    private final Optional<ContentCipher> cipher;

    KeyedAtRest(StorageSettings settings) {
        this.cipher = settings.keyFile().map(ScanKey::of).map(ContentCipher::new);
    }

    @Override
    public OutputStream keeping(String name, OutputStream out) throws IOException {
        return cipher.isPresent() ? cipher.get().encrypting(name, out) : out;
    }

    @Override
    public InputStream kept(String name, InputStream in) throws IOException {
        PushbackInputStream begun = new PushbackInputStream(in, BYTES_TO_TELL);
        byte[] first = begun.readNBytes(BYTES_TO_TELL);
        begun.unread(first);
        if (!ContentCipher.isEncrypted(first)) {
            return begun;
        }
        if (cipher.isEmpty()) {
            throw new IOException(
                    "it is encrypted by the key of the installation that it comes from: give the same key file as wallplate.scans-key-file");
        }
        return cipher.get().decrypt(name, begun);
    }
}
