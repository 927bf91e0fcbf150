package wallplate.sheet.formats;

import java.util.Optional;

/** What a camera noted about a picture: how it was held, and a resolution. */
record ExifNote(int orientation, double dpiX, double dpiY) {

    /** The note in the TIFF structure that begins at a place; empty where there is none. */
    static Optional<ExifNote> at(byte[] content, int place) {
        int length = Math.max(0, Math.min(content.length - place, 0x10000));
        byte[] structure = new byte[length];
        if (length > 0) {
            System.arraycopy(content, place, structure, 0, length);
        }
        return TiffDirectory.first(structure).map(directory -> new ExifNote(
                (int) directory.number(TiffDirectory.ORIENTATION, 1), directory.dpiX(), directory.dpiY()));
    }
}
