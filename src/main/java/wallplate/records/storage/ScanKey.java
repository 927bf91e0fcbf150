package wallplate.records.storage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.SecretKey;
import javax.crypto.spec.SecretKeySpec;

/** The key of an installation by which scans are encrypted at rest: 256 bits. */
final class ScanKey {

    static final int SALT_BYTES = 16;
    private static final int KEY_BYTES = 32;
    private static final byte[] PURPOSE = "wallplate scan 1".getBytes(StandardCharsets.US_ASCII);

    private final byte[] bytes;

    ScanKey(byte[] bytes) {
        if (bytes.length != KEY_BYTES) {
            throw new IllegalArgumentException("a key has 32 bytes, not " + bytes.length);
        }
        this.bytes = bytes.clone();
    }

    /** Reads a key file: 64 hexadecimal digits. */
    static ScanKey of(Path file) {
        try {
            return new ScanKey(HexFormat.of().parseHex(Files.readString(file).strip()));
        } catch (IOException broken) {
            throw new IllegalStateException("the key file " + file + " of wallplate.scans-key-file cannot be read", broken);
        } catch (IllegalArgumentException broken) {
            // Without its cause, which would repeat what stands in the file.
            throw new IllegalStateException("the key file " + file + " must hold 64 hexadecimal digits and nothing else");
        }
    }

    /**
     * A key for one content alone, so that counted nonces never meet twice under one key: HMAC-SHA-256 of the key over
     * purpose and salt.
     */
    SecretKey forContent(byte[] salt) throws GeneralSecurityException {
        Mac mac = Mac.getInstance("HmacSHA256");
        mac.init(new SecretKeySpec(bytes, "HmacSHA256"));
        mac.update(PURPOSE);
        return new SecretKeySpec(mac.doFinal(salt), "AES");
    }
}
