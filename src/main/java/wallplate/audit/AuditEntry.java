package wallplate.audit;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;

/**
 * One thing that was done.
 *
 * @param number from 1, without gaps
 * @param at to a microsecond, as databases keep it
 * @param act what was done, as the address that did it
 * @param subject to what: an address with ids, no names
 * @param previousHash the hash of the entry before; 64 zeros for the first
 * @param hash SHA-256 over all the others, as 64 hexadecimal figures
 */
public record AuditEntry(
        long number, Instant at, String person, String act, String subject, String previousHash, String hash) {

    /** What the first entry is chained to. */
    public static final String BEFORE_THE_FIRST = "0".repeat(64);

    /** The entry that follows one with that number and hash. */
    public static AuditEntry after(
            long previousNumber, String previousHash, Instant at, String person, String act, String subject) {
        Instant kept = at.truncatedTo(ChronoUnit.MICROS);
        AuditEntry open = new AuditEntry(previousNumber + 1, kept, person, act, subject, previousHash, "");
        return new AuditEntry(open.number, kept, person, act, subject, previousHash, open.computedHash());
    }

    /** The hash that this entry should have. Each field has its length before it, so that no two entries read alike. */
    public String computedHash() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String field : List.of(Long.toString(number), at.toString(), person, act, subject, previousHash)) {
                byte[] bytes = field.getBytes(StandardCharsets.UTF_8);
                digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).array());
                digest.update(bytes);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java has SHA-256", missing);
        }
    }
}
