package wallplate.sheet;

import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.PictureHeader;

/** The sentences with which files are refused: what was found and what to do. */
final class Refusals {

    static final String DAMAGED = "This picture is damaged or cut short. Save or scan it again and upload the new file.";

    /** The end mark of a JPEG file lies within its last bytes, unless it was cut short; cameras add little behind it. */
    private static final int JPEG_END_WITHIN = 65_536;

    private Refusals() {}

    /** Why a file of a format that holds no pages is refused. */
    static String of(FileFormat format) {
        return switch (format) {
            case EMPTY -> "This file is empty. Save or scan the sheet again and upload the new file.";
            case TEXT -> "This file holds text, not a picture, whatever its name says. Upload the scan itself.";
            case HEIC -> "This photograph is in the HEIC format, which cannot be read. Set the telephone's camera to its most"
                    + " compatible format (JPEG) and take it again, or save it as JPEG first.";
            case OTHER_PICTURE -> "This kind of picture is not read. Save it as PNG, JPEG, TIFF or PDF.";
            default -> "This file is not a picture that can be read. Upload PNG, JPEG, BMP, WebP, TIFF, PDF or a ZIP of them.";
        };
    }

    static Refused tooLarge(PictureHeader header, long most) {
        return new Refused(
                "This picture is %d x %d pixels, more than the %d million that can be read. Scan the sheet again at 300 dpi."
                        .formatted(header.widthPx(), header.heightPx(), most / 1_000_000));
    }

    /** Whether a file's end is missing, which decoders fill with grey without a word. */
    static boolean isCutShort(FileFormat format, byte[] content) {
        return switch (format) {
            case PNG -> !hasNearEnd(content, 4096, 'I', 'E', 'N', 'D');
            case JPEG -> !hasNearEnd(content, JPEG_END_WITHIN, 0xff, 0xd9);
            default -> false;
        };
    }

    private static boolean hasNearEnd(byte[] content, int within, int... mark) {
        for (int at = content.length - mark.length; at >= Math.max(0, content.length - within); at--) {
            boolean found = true;
            for (int i = 0; found && i < mark.length; i++) {
                found = (content[at + i] & 0xff) == mark[i];
            }
            if (found) {
                return true;
            }
        }
        return false;
    }
}
