package wallplate.sheet.formats;

import java.util.Optional;

/**
 * What a picture's header says of its size and resolution.
 *
 * @param dpiX pixels per inch along a row of the file, 0 where it does not say
 * @param dpiY pixels per inch down a column of the file, 0 where it does not say
 * @param sidesSwapped whether the note on its orientation turns rows to columns
 */
public record PictureHeader(long widthPx, long heightPx, double dpiX, double dpiY, boolean sidesSwapped) {

    private static final double CM_PER_INCH = 2.54;
    private static final double METRE_PER_INCH = 0.0254;
    private static final int FIRST_SIDEWAYS_ORIENTATION = 5;
    private static final int LAST_ORIENTATION = 8;

    public long pixels() {
        return widthPx * heightPx;
    }

    /** The header of a file of a format with one picture; empty where it makes no sense. */
    public static Optional<PictureHeader> of(FileFormat format, byte[] content) {
        Optional<PictureHeader> header =
                switch (format) {
                    case PNG -> png(new Bytes(content, true));
                    case JPEG -> jpeg(new Bytes(content, true));
                    case BMP -> bmp(new Bytes(content, false));
                    case WEBP -> webp(new Bytes(content, false));
                    default -> Optional.empty();
                };
        return header.filter(found -> found.widthPx > 0 && found.heightPx > 0);
    }

    /** After the PNG specification: IHDR comes first, pHYs before the first IDAT. */
    private static Optional<PictureHeader> png(Bytes bytes) {
        if (!bytes.hasAt(12, "IHDR")) {
            return Optional.empty();
        }
        double dpiX = 0;
        double dpiY = 0;
        long at = 8;
        while (at + 12 <= bytes.length() && !bytes.hasAt(at + 4, "IDAT")) {
            if (bytes.hasAt(at + 4, "pHYs") && bytes.unsigned8(at + 16) == 1) {
                dpiX = bytes.unsigned32(at + 8) * METRE_PER_INCH;
                dpiY = bytes.unsigned32(at + 12) * METRE_PER_INCH;
            }
            at += 12 + bytes.unsigned32(at);
        }
        return Optional.of(new PictureHeader(bytes.unsigned32(16), bytes.unsigned32(20), dpiX, dpiY, false));
    }

    /** After ITU-T T.81 and JFIF 1.02: segments up to the start of frame. */
    private static Optional<PictureHeader> jpeg(Bytes bytes) {
        double dpiX = 0;
        double dpiY = 0;
        Optional<ExifNote> exif = Optional.empty();
        long at = 2;
        while (at + 4 <= bytes.length()) {
            if (bytes.unsigned8(at) != 0xff) {
                return Optional.empty();
            }
            int marker = bytes.unsigned8(at + 1);
            if (marker == 0xff) {
                at++;
                continue;
            }
            if (isFrameStart(marker)) {
                return Optional.of(jpeg(bytes.unsigned16(at + 7), bytes.unsigned16(at + 5), dpiX, dpiY, exif));
            }
            if (marker == 0xe0 && bytes.hasAt(at + 4, "JFIF")) {
                double unit = bytes.unsigned8(at + 11) == 1 ? 1 : bytes.unsigned8(at + 11) == 2 ? CM_PER_INCH : 0;
                dpiX = bytes.unsigned16(at + 12) * unit;
                dpiY = bytes.unsigned16(at + 14) * unit;
            }
            if (marker == 0xe1 && bytes.hasAt(at + 4, "Exif")) {
                exif = ExifNote.at(bytes.content(), (int) (at + 10));
            }
            at += isAlone(marker) ? 2 : 2 + Math.max(2, bytes.unsigned16(at + 2));
        }
        return Optional.empty();
    }

    private static PictureHeader jpeg(
            int width, int height, double dpiX, double dpiY, Optional<ExifNote> exif) {
        boolean swapped = exif.map(note -> note.orientation() >= FIRST_SIDEWAYS_ORIENTATION
                        && note.orientation() <= LAST_ORIENTATION)
                .orElse(false);
        double x = dpiX > 1 ? dpiX : exif.map(ExifNote::dpiX).orElse(0.0);
        double y = dpiY > 1 ? dpiY : exif.map(ExifNote::dpiY).orElse(0.0);
        return new PictureHeader(width, height, x, y, swapped);
    }

    private static boolean isFrameStart(int marker) {
        return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
    }

    private static boolean isAlone(int marker) {
        return marker == 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    }

    private static Optional<PictureHeader> bmp(Bytes bytes) {
        long headerSize = bytes.unsigned32(14);
        if (headerSize < 40) {
            return Optional.of(new PictureHeader(bytes.unsigned16(18), bytes.unsigned16(20), 0, 0, false));
        }
        long height = (int) bytes.unsigned32(22);
        return Optional.of(new PictureHeader(
                bytes.unsigned32(18),
                Math.abs(height),
                bytes.unsigned32(38) * METRE_PER_INCH,
                bytes.unsigned32(42) * METRE_PER_INCH,
                false));
    }

    /** After the WebP container specification: the three kinds of first chunk. */
    private static Optional<PictureHeader> webp(Bytes bytes) {
        if (bytes.hasAt(12, "VP8 ")) {
            return size(bytes.unsigned16(26) & 0x3fff, bytes.unsigned16(28) & 0x3fff);
        }
        if (bytes.hasAt(12, "VP8L")) {
            long bits = bytes.unsigned32(21);
            return size((bits & 0x3fff) + 1, (bits >> 14 & 0x3fff) + 1);
        }
        if (bytes.hasAt(12, "VP8X")) {
            return size(bytes.unsigned24(24) + 1L, bytes.unsigned24(27) + 1L);
        }
        return Optional.empty();
    }

    private static Optional<PictureHeader> size(long width, long height) {
        return Optional.of(new PictureHeader(width, height, 0, 0, false));
    }
}
