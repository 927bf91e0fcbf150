package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.sheet.InkImage;

/** Tiles hold the page's own pixels, every one of them once. */
class PageTilesTest {

    private static final int WIDTH = 301;
    private static final int HEIGHT = 197;

    private final byte[] page = page();

    @Test
    void coverThePageWithoutGapsAndOverlaps() throws Exception {
        BufferedImage whole = picture(page);
        PageTiles tiles = PageTiles.of(page);
        int top = 0;
        for (int row = 0; row < PageTiles.ROWS; row++) {
            int left = 0;
            int height = 0;
            for (int column = 0; column < PageTiles.COLUMNS; column++) {
                BufferedImage tile = picture(tiles.tile(column, row).orElseThrow());
                assertSame(tile, whole.getSubimage(left, top, tile.getWidth(), tile.getHeight()));
                left += tile.getWidth();
                height = tile.getHeight();
            }
            assertThat(left).isEqualTo(WIDTH);
            top += height;
        }
        assertThat(top).isEqualTo(HEIGHT);
        assertThat(tiles.tile(PageTiles.COLUMNS, 0)).isEmpty();
        assertThat(tiles.tile(0, -1)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 301, 197", "40, 30, 100, 90", "51, 49, 1, 1", "250, 150, 100, 100"})
    void putAPartTogetherAsItIsOnThePage(int left, int top, int width, int height) throws Exception {
        BufferedImage whole = picture(page);

        BufferedImage part = picture(PageTiles.of(page).part(left, top, width, height));

        int within = Math.min(width, WIDTH - left);
        int high = Math.min(height, HEIGHT - top);
        assertThat(part.getWidth()).isEqualTo(within);
        assertThat(part.getHeight()).isEqualTo(high);
        assertSame(part, whole.getSubimage(left, top, within, high));
    }

    @Test
    void giveAPartOutsideThePageAsOnePixel() throws Exception {
        assertThat(picture(PageTiles.of(page).part(5000, 5000, 10, 10)).getWidth()).isEqualTo(1);
    }

    private static void assertSame(BufferedImage one, BufferedImage other) {
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                assertThat(one.getRGB(x, y)).as("%d, %d", x, y).isEqualTo(other.getRGB(x, y));
            }
        }
    }

    private static BufferedImage picture(byte[] png) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    private static byte[] page() {
        byte[] ink = new byte[WIDTH * HEIGHT];
        new Random(11).nextBytes(ink);
        return PagePicture.full(new InkImage(WIDTH, HEIGHT, 10, ink));
    }
}
