package wallplate.sheet;

/**
 * One page of a file that was handed in: its picture, or the reason why there is none.
 *
 * @param scan the file's own name, such as {@code sheet-07.pdf}; never a path
 * @param page the page within the file, from 1
 */
public record ScanPage(String scan, int page, Content content) {

    /** The page as it was handed in, named with the file and page that it came from. */
    public ScanPage {
        if (page < 1) {
            throw new IllegalArgumentException("pages count from 1, not from " + page);
        }
    }

    /** What is on the page. */
    public sealed interface Content {}

    /**
     * The page's grey picture, turned as its camera's note (EXIF orientation) asks.
     *
     * <p>The bytes are shared, not copied, because a page is large: they are never written to.
     *
     * @param grey row by row from the top, 0 black to 255 white, {@code widthPx * heightPx} bytes
     * @param dpiX pixels per inch along a row as the file states them, 0 where it states none
     * @param dpiY pixels per inch down a column, 0 where not stated
     */
    public record Picture(int widthPx, int heightPx, byte[] grey, double dpiX, double dpiY) implements Content {

        public Picture {
            if (grey.length != widthPx * heightPx) {
                throw new IllegalArgumentException(
                        "%d x %d pixels need as many bytes, not %d".formatted(widthPx, heightPx, grey.length));
            }
        }
    }

    /**
     * The page could not be turned into a picture.
     *
     * @param reason one sentence with what was found and what can be done
     */
    public record Refused(String reason) implements Content {}
}
