package wallplate.records.storage;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import javax.crypto.Cipher;
import javax.crypto.SecretKey;
import javax.crypto.spec.GCMParameterSpec;

/**
 * Encrypts contents with AES-256-GCM, piece by piece, so that neither side holds a whole file and nothing that was not
 * verified is given out.
 *
 * <p>Layout: eight bytes that tell the format, a salt of 16 bytes, pieces of 64 KiB with a tag of 16 bytes each. The nonce
 * of a piece is its number and whether it is the last (STREAM: Hoang, Reyhanitabar, Rogaway, Vizár, CRYPTO 2015), so that
 * pieces left out, put in another order or cut off are noticed; the content's name is authenticated with each.
 */
final class ContentCipher {

    private static final byte[] MAGIC = "WPSCAN1\n".getBytes(StandardCharsets.US_ASCII);
    private static final int PIECE_BYTES = 65_536;
    private static final int TAG_BYTES = 16;
    private static final int NONCE_BYTES = 12;

    private final ScanKey key;
    private final SecureRandom random = new SecureRandom();

    ContentCipher(ScanKey key) {
        this.key = key;
    }

    void encrypt(String name, InputStream plain, OutputStream out) throws IOException {
        // Not closed, which would close what it is written to.
        Encrypted encrypted = new Encrypted(name, out);
        plain.transferTo(encrypted);
        encrypted.end();
    }

    /** What is written to it arrives encrypted; whole only when it was closed. */
    OutputStream encrypting(String name, OutputStream out) throws IOException {
        return new Encrypted(name, out);
    }

    /** Whether these are the first bytes of something that was encrypted here. */
    static boolean isEncrypted(byte[] first) {
        return first.length >= MAGIC.length && Arrays.equals(Arrays.copyOf(first, MAGIC.length), MAGIC);
    }

    /** The content as it was laid down; one that was kept before there was a key is given as it lies. */
    InputStream decrypt(String name, InputStream kept) throws IOException {
        byte[] head = kept.readNBytes(MAGIC.length);
        if (!Arrays.equals(head, MAGIC)) {
            return new java.io.SequenceInputStream(new ByteArrayInputStream(head), kept);
        }
        return new Decrypted(kept, new Pieces(Cipher.DECRYPT_MODE, name, kept.readNBytes(ScanKey.SALT_BYTES)));
    }

    /** The pieces of one content, one after another. */
    private final class Pieces {

        private final int mode;
        private final byte[] name;
        private final SecretKey own;
        private int number;

        Pieces(int mode, String name, byte[] salt) throws IOException {
            this.mode = mode;
            this.name = name.getBytes(StandardCharsets.US_ASCII);
            try {
                this.own = key.forContent(salt);
            } catch (GeneralSecurityException broken) {
                throw new IOException("this Java platform has no HMAC-SHA-256", broken);
            }
        }

        byte[] next(byte[] piece, boolean last) throws IOException {
            byte[] nonce = ByteBuffer.allocate(NONCE_BYTES)
                    .putInt(NONCE_BYTES - 5, number)
                    .put(NONCE_BYTES - 1, (byte) (last ? 1 : 0))
                    .array();
            number = Math.incrementExact(number);
            try {
                Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
                cipher.init(mode, own, new GCMParameterSpec(8 * TAG_BYTES, nonce));
                cipher.updateAAD(name);
                return cipher.doFinal(piece);
            } catch (GeneralSecurityException broken) {
                throw new IOException("a kept scan was changed, cut off or encrypted with another key", broken);
            }
        }
    }

    /** Keeps a piece until more follows, because the last one is marked as such. */
    private final class Encrypted extends OutputStream {

        private final OutputStream out;
        private final Pieces pieces;
        private final byte[] piece = new byte[PIECE_BYTES];
        private int filled;
        private boolean ended;

        Encrypted(String name, OutputStream out) throws IOException {
            byte[] salt = new byte[ScanKey.SALT_BYTES];
            random.nextBytes(salt);
            this.out = out;
            this.pieces = new Pieces(Cipher.ENCRYPT_MODE, name, salt);
            out.write(MAGIC);
            out.write(salt);
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            int from = offset;
            int left = length;
            while (left > 0) {
                if (filled == PIECE_BYTES) {
                    out.write(pieces.next(piece, false));
                    filled = 0;
                }
                int fits = Math.min(left, PIECE_BYTES - filled);
                System.arraycopy(bytes, from, piece, filled, fits);
                filled += fits;
                from += fits;
                left -= fits;
            }
        }

        void end() throws IOException {
            if (!ended) {
                ended = true;
                out.write(pieces.next(Arrays.copyOf(piece, filled), true));
            }
        }

        @Override
        public void close() throws IOException {
            end();
            out.close();
        }
    }

    /** Gives a piece out when it was verified. */
    private static final class Decrypted extends InputStream {

        private final InputStream kept;
        private final Pieces pieces;
        private byte[] next;
        private ByteArrayInputStream piece = new ByteArrayInputStream(new byte[0]);
        private boolean ended;

        Decrypted(InputStream kept, Pieces pieces) throws IOException {
            this.kept = kept;
            this.pieces = pieces;
            this.next = kept.readNBytes(PIECE_BYTES + TAG_BYTES);
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] target, int offset, int length) throws IOException {
            if (length == 0) {
                return 0;
            }
            while (piece.available() == 0) {
                if (ended) {
                    return -1;
                }
                if (next.length < TAG_BYTES) {
                    throw new IOException("a kept scan was cut off");
                }
                byte[] after = kept.readNBytes(PIECE_BYTES + TAG_BYTES);
                ended = after.length == 0;
                piece = new ByteArrayInputStream(pieces.next(next, ended));
                next = after;
            }
            return piece.read(target, offset, length);
        }

        @Override
        public void close() throws IOException {
            kept.close();
        }
    }
}
