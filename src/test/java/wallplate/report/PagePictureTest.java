package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import wallplate.sheet.InkImage;

class PagePictureTest {

    @Test
    void givesInkBackToTheNearestGrey() {
        InkImage ink = someInk(61, 37);

        InkImage read = PagePicture.read(PagePicture.full(ink), ink.pixelsPerMm());

        assertThat(read.widthPx()).isEqualTo(61);
        assertThat(read.heightPx()).isEqualTo(37);
        for (int index = 0; index < ink.bytes().length; index++) {
            assertThat((read.bytes()[index] & 0xff) - (ink.bytes()[index] & 0xff))
                    .as("pixel %d", index)
                    .isBetween(-9, 9);
        }
    }

    @Test
    void showsBarePaperWhiteAndFullInkBlack() throws Exception {
        InkImage ink = new InkImage(2, 1, 10, new byte[] {0, (byte) 255});

        var picture = ImageIO.read(new ByteArrayInputStream(PagePicture.full(ink)));

        assertThat(picture.getRGB(0, 0) & 0xffffff).isEqualTo(0xffffff);
        assertThat(picture.getRGB(1, 0) & 0xffffff).isEqualTo(0x000000);
    }

    @Test
    void makesAScreenPictureOfAboutSixPixelsAMillimetre() throws Exception {
        InkImage ink = new InkImage(240, 120, 12, new byte[240 * 120]);

        var picture = ImageIO.read(new ByteArrayInputStream(PagePicture.forScreen(ink)));

        assertThat(picture.getWidth()).isEqualTo(120);
        assertThat(picture.getHeight()).isEqualTo(60);
    }

    @Test
    void givesTheSameBytesForTheSameInk() {
        assertThat(PagePicture.full(someInk(50, 50))).isEqualTo(PagePicture.full(someInk(50, 50)));
    }

    private static InkImage someInk(int widthPx, int heightPx) {
        byte[] bytes = new byte[widthPx * heightPx];
        new Random(7).nextBytes(bytes);
        return new InkImage(widthPx, heightPx, 12, bytes);
    }
}
