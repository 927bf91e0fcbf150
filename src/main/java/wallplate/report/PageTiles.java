package wallplate.report;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A page picture cut into tiles, each a PNG of its own, so that a look at one place does not cost the whole sheet.
 *
 * <p>Whatever its size, a page has {@link #COLUMNS} times {@link #ROWS} tiles; their edges lie at whole pixels.
 */
public final class PageTiles {

    public static final int COLUMNS = 6;
    public static final int ROWS = 4;

    private final int widthPx;
    private final int heightPx;
    private final List<byte[]> tiles;

    private PageTiles(int widthPx, int heightPx, List<byte[]> tiles) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.tiles = tiles;
    }

    /** Cuts a picture that {@link PagePicture} made. */
    public static PageTiles of(byte[] png) {
        BufferedImage page = PagePicture.decoded(png);
        List<byte[]> tiles = new ArrayList<>();
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                Rectangle place = place(column, row, page.getWidth(), page.getHeight());
                tiles.add(
                        place.isEmpty()
                                ? new byte[0]
                                : PagePicture.encoded(page.getSubimage(place.x, place.y, place.width, place.height)));
            }
        }
        return new PageTiles(page.getWidth(), page.getHeight(), List.copyOf(tiles));
    }

    private static Rectangle place(int column, int row, int widthPx, int heightPx) {
        int left = Math.round((float) column * widthPx / COLUMNS);
        int top = Math.round((float) row * heightPx / ROWS);
        int right = Math.round((column + 1f) * widthPx / COLUMNS);
        int bottom = Math.round((row + 1f) * heightPx / ROWS);
        return new Rectangle(left, top, right - left, bottom - top);
    }

    /** The memory that the tiles take. */
    public int bytes() {
        return tiles.stream().mapToInt(tile -> tile.length).sum();
    }

    /** The tile in a column and row, both from 0, the first at the upper left; empty where there is none. */
    public Optional<byte[]> tile(int column, int row) {
        if (column < 0 || column >= COLUMNS || row < 0 || row >= ROWS) {
            return Optional.empty();
        }
        return Optional.of(tiles.get(row * COLUMNS + column)).filter(tile -> tile.length > 0);
    }

    /** A part of the page as a picture of its own; what lies outside the page is left out. */
    public byte[] part(int leftPx, int topPx, int widthPx, int heightPx) {
        Rectangle wanted = new Rectangle(leftPx, topPx, Math.max(1, widthPx), Math.max(1, heightPx))
                .intersection(new Rectangle(this.widthPx, this.heightPx));
        if (wanted.isEmpty()) {
            wanted = new Rectangle(1, 1);
        }
        BufferedImage part = PagePicture.blank(wanted.width, wanted.height);
        Graphics2D paste = part.createGraphics();
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                Rectangle place = place(column, row, this.widthPx, this.heightPx);
                if (place.intersects(wanted)) {
                    BufferedImage tile = PagePicture.decoded(tiles.get(row * COLUMNS + column));
                    paste.drawImage(tile, place.x - wanted.x, place.y - wanted.y, null);
                }
            }
        }
        paste.dispose();
        return PagePicture.encoded(part);
    }
}
