package wallplate.sheet.formats;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** What kind of file bytes are, told by their first bytes and never by the file's name. */
public enum FileFormat {
    PNG,
    JPEG,
    BMP,
    WEBP,
    TIFF,
    PDF,
    ZIP,
    HEIC,
    /** A picture in a format that is not read. */
    OTHER_PICTURE,
    TEXT,
    EMPTY,
    UNKNOWN;

    /** So many first bytes are enough to tell. */
    public static final int BYTES_NEEDED = 1100;

    private static final int PDF_HEADER_WITHIN = 1024;
    private static final List<String> HEIF_BRANDS =
            List.of("heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis");

    /** The format of a file that begins with these bytes. */
    public static FileFormat of(byte[] start) {
        if (start.length == 0) {
            return EMPTY;
        }
        if (startsWith(start, 0, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n')) {
            return PNG;
        }
        if (startsWith(start, 0, 0xff, 0xd8, 0xff)) {
            return JPEG;
        }
        if (startsWith(start, 0, 'I', 'I', '*', 0) || startsWith(start, 0, 'M', 'M', 0, '*')) {
            return TIFF;
        }
        if (startsWith(start, 0, 'R', 'I', 'F', 'F') && startsWith(start, 8, 'W', 'E', 'B', 'P')) {
            return WEBP;
        }
        if (startsWith(start, 0, 'P', 'K', 3, 4) || startsWith(start, 0, 'P', 'K', 5, 6)) {
            return ZIP;
        }
        if (startsWith(start, 4, 'f', 't', 'y', 'p')) {
            return ofBrand(start);
        }
        return ofLooseStart(start);
    }

    private static FileFormat ofBrand(byte[] start) {
        if (start.length < 12) {
            return UNKNOWN;
        }
        String brand = new String(start, 8, 4, StandardCharsets.ISO_8859_1);
        return HEIF_BRANDS.contains(brand) ? HEIC : UNKNOWN;
    }

    private static FileFormat ofLooseStart(byte[] start) {
        int searched = Math.min(start.length, PDF_HEADER_WITHIN);
        if (new String(start, 0, searched, StandardCharsets.ISO_8859_1).contains("%PDF-")) {
            return PDF;
        }
        if (startsWith(start, 0, 'B', 'M') && start.length > 26) {
            return BMP;
        }
        if (startsWith(start, 0, 'G', 'I', 'F', '8')
                || startsWith(start, 0, 0, 0, 0, 0x0c, 'j', 'P')
                || startsWith(start, 0, 0xff, 0x4f, 0xff, 0x51)
                || startsWith(start, 0, 'I', 'I', '+', 0)
                || startsWith(start, 0, 'M', 'M', 0, '+')
                || startsWith(start, 0, 0x97, 'J', 'B', '2')) {
            return OTHER_PICTURE;
        }
        return isText(start) ? TEXT : UNKNOWN;
    }

    private static boolean isText(byte[] start) {
        for (byte each : start) {
            int value = each & 0xff;
            if (value < 0x20 && value != '\n' && value != '\r' && value != '\t' && value != '\f') {
                return false;
            }
        }
        return true;
    }

    private static boolean startsWith(byte[] bytes, int at, int... magic) {
        byte[] expected = new byte[magic.length];
        for (int i = 0; i < magic.length; i++) {
            expected[i] = (byte) magic[i];
        }
        return bytes.length >= at + magic.length
                && Arrays.equals(bytes, at, at + magic.length, expected, 0, expected.length);
    }
}
