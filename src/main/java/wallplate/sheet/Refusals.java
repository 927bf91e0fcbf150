package wallplate.sheet;

import java.util.Locale;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.PictureHeader;

/** The sentences with which files are refused: what was found and what to do. */
final class Refusals {

    static final String DAMAGED = "This picture is damaged or cut short. Save or scan it again and upload the new file.";

    /** The end mark of a JPEG file lies within its last bytes, unless it was cut short; cameras add little behind it. */
    private static final int JPEG_END_WITHIN = 65_536;

    private static final double MM_PER_INCH = 25.4;

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

    /** Why a picture is refused that has hardly any pixels: dots to the inch of paper would say nothing of it. */
    static String tooSmall(int widthPx, int heightPx) {
        return ("This picture is only %d x %d pixels, far too small to show a sheet; it may be an icon or a preview. Upload"
                        + " the scan or the photograph itself.")
                .formatted(widthPx, heightPx);
    }

    /** Why a picture with too few pixels to the millimetre of paper is refused, and how many are needed. */
    static String tooCoarse(double pixelsPerMm, boolean photograph) {
        String advice = photograph
                ? "Take the photograph again from nearer, so that the sheet fills the picture."
                : "Scan it again at 300 dpi.";
        return String.format(
                Locale.ROOT,
                "This picture shows only %.0f dots to the inch of paper, too few to measure thin lines; at least 100 are"
                        + " needed. %s",
                pixelsPerMm * MM_PER_INCH,
                advice);
    }

    /** Why a picture is refused whose lines are broad shades. */
    static String blurred(boolean photograph) {
        return "This picture is too blurred: its lines run together and cannot be measured. "
                + (photograph
                        ? "Clean the lens, tap on the drawing so that the camera focuses on it, hold still and take it again."
                        : "Lay the sheet flat on the scanner's glass and scan it again.");
    }

    /** Why a sheet is refused that has neither bar nor marks nor the edges of its paper in the picture. */
    static String nothingToMeasureBy(double barMm, boolean photograph) {
        String again = photograph
                ? "take the photograph again from straight above with all four edges of the paper in it"
                : "scan it again";
        return String.format(
                Locale.ROOT,
                "There is no reference bar on this sheet and the edges of the paper are not in the picture, so nothing"
                        + " tells how large it is. Draw a level bar %.0f mm long with a short upright tick at either end"
                        + " at the bottom of the sheet, and %s.",
                barMm,
                again);
    }

    /** Why a picture is refused that shows a part of a sheet without the bar, or only a part of the bar. */
    static String barCutOff(double barMm, boolean photograph) {
        String again = photograph ? "Take the photograph again with the whole sheet in it" : "Scan the whole sheet again";
        return String.format(
                Locale.ROOT,
                "Only a part of the sheet is in this picture, without a whole reference bar. %s, so that the bar at its"
                        + " bottom can be seen from tick to tick. If there is no bar, draw one: a level line %.0f mm long"
                        + " with a short upright tick at either end.",
                again,
                barMm);
    }

    /** Whether a file's end is missing, which decoders fill with grey without a word. */
    static boolean isCutShort(FileFormat format, byte[] content) {
        return switch (format) {
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
