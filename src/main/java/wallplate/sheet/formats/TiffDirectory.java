package wallplate.sheet.formats;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One page's directory of a TIFF file, after TIFF 6.0: its tags with their first value, without its picture.
 *
 * @param values the first value of every tag that is a whole number or a ratio
 */
public record TiffDirectory(Map<Integer, Double> values) {

    /** More pages than this are not looked for: a chain that long is hostile. */
    public static final int MOST_PAGES = 2000;

    static final int ORIENTATION = 274;
    private static final int WIDTH = 256;
    private static final int HEIGHT = 257;
    private static final int X_RESOLUTION = 282;
    private static final int Y_RESOLUTION = 283;
    private static final int RESOLUTION_UNIT = 296;
    private static final int TILE_WIDTH = 322;
    private static final int TILE_LENGTH = 323;
    private static final double CM_PER_INCH = 2.54;
    private static final int MOST_TAGS = 512;

    public TiffDirectory {
        values = Map.copyOf(values);
    }

    /** The directories of all pages in order; fewer where the chain breaks or runs in a circle. */
    public static List<TiffDirectory> all(byte[] content) {
        return chain(content, MOST_PAGES);
    }

    static Optional<TiffDirectory> first(byte[] content) {
        return chain(content, 1).stream().findFirst();
    }

    private static List<TiffDirectory> chain(byte[] content, int most) {
        List<TiffDirectory> directories = new ArrayList<>();
        Bytes bytes = new Bytes(content, content.length > 0 && content[0] == 'M');
        if (bytes.unsigned16(2) != 42) {
            return directories;
        }
        Set<Long> seen = new HashSet<>();
        long at = bytes.unsigned32(4);
        while (at > 0 && at + 2 <= bytes.length() && directories.size() < most && seen.add(at)) {
            int count = Math.min(MOST_TAGS, bytes.unsigned16(at));
            directories.add(at(bytes, at + 2, count));
            at = bytes.unsigned32(at + 2 + 12L * bytes.unsigned16(at));
        }
        return directories;
    }

    private static TiffDirectory at(Bytes bytes, long start, int count) {
        Map<Integer, Double> values = new HashMap<>();
        for (int i = 0; i < count; i++) {
            long entry = start + 12L * i;
            int type = bytes.unsigned16(entry + 2);
            long offset = bytes.unsigned32(entry + 8);
            double value =
                    switch (type) {
                        case 1 -> bytes.unsigned8(entry + 8);
                        case 3 -> bytes.unsigned16(entry + 8);
                        case 4 -> offset;
                        case 5 -> ratio(bytes.unsigned32(offset), bytes.unsigned32(offset + 4));
                        default -> 0;
                    };
            values.putIfAbsent(bytes.unsigned16(entry), value);
        }
        return new TiffDirectory(values);
    }

    private static double ratio(long numerator, long denominator) {
        return denominator == 0 ? 0 : (double) numerator / denominator;
    }

    double number(int tag, double otherwise) {
        return values.getOrDefault(tag, otherwise);
    }

    double dpiX() {
        return number(X_RESOLUTION, 0) * unit();
    }

    double dpiY() {
        return number(Y_RESOLUTION, 0) * unit();
    }

    private double unit() {
        double unit = number(RESOLUTION_UNIT, 2);
        return unit == 3 ? CM_PER_INCH : unit == 2 ? 1 : 0;
    }

    /** Pixels of one tile, 0 where the page is stored in strips. */
    long tilePixels() {
        return (long) (number(TILE_WIDTH, 0) * number(TILE_LENGTH, 0));
    }

    /** Size and resolution of the page's picture. */
    public PictureHeader header() {
        double orientation = number(ORIENTATION, 1);
        return new PictureHeader(
                (long) number(WIDTH, 0), (long) number(HEIGHT, 0), dpiX(), dpiY(), orientation >= 5 && orientation <= 8);
    }
}
