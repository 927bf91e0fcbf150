package wallplate.sheet.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.PaperSides;

/** Paper on a desk whose bright fibres are as bright as the paper; the edges are known exactly. */
class PaperRegionTest {

    private static final int WIDTH = 1600;
    private static final int HEIGHT = 1200;
    private static final Point MIDDLE = new Point(810, 590);
    private static final double HALF_WIDTH = 560;
    private static final double HALF_HEIGHT = 396;
    private static final double TURN = 4;
    private static final int PAPER_GREY = 180;
    /** The darkest fibre is so much darker than the paper, the brightest so much brighter. */
    private static final int DARKER = 80;

    private static final int BRIGHTER = 15;
    /** Fibres run askew over the whole desk and are so broad, in pixels. */
    private static final double FIBRE_DEGREES = 40;

    private static final int FIBRE = 6;

    private final Picture picture = picture();

    @Test
    void tellsPaperFromAGrainyDeskByItsSmoothness() {
        PaperSides sides = PaperSides.near(PaperRegion.in(picture).byTexture().outline(0), picture);

        assertThat(sides.complete()).isTrue();
        List<Vector> outwards = List.of(new Vector(0, 1), new Vector(1, 0), new Vector(0, -1), new Vector(-1, 0));
        for (int i = 0; i < 4; i++) {
            double half = i % 2 == 0 ? HALF_HEIGHT : HALF_WIDTH;
            Point edge = MIDDLE.plus(outwards.get(i).rotatedDegrees(TURN).times(half));
            assertThat(Math.abs(sides.sides().get(i).orElseThrow().line().distanceTo(edge)))
                    .as("pixels from the edge")
                    .isLessThan(0.5);
        }
    }

    @Test
    void cannotTellThatPaperByItsBrightness() {
        assertThat(PaperSides.near(PaperRegion.in(picture).outline(0), picture).complete())
                .isFalse();
    }

    private static Picture picture() {
        Random random = new Random(5);
        double[] fibres = random.doubles(400, -DARKER, BRIGHTER).toArray();
        Vector along = Vector.atDegrees(FIBRE_DEGREES);
        byte[] grey = new byte[WIDTH * HEIGHT];
        for (int at = 0; at < grey.length; at++) {
            Vector off = new Point(at % WIDTH + 0.5, at / WIDTH + 0.5).minus(MIDDLE).rotatedDegrees(-TURN);
            boolean paper = Math.abs(off.x()) < HALF_WIDTH && Math.abs(off.y()) < HALF_HEIGHT;
            int fibre = (int) Math.floor(off.cross(along) / FIBRE) + 200;
            double level = PAPER_GREY + (paper ? 0 : fibres[fibre]) + 2 * random.nextGaussian();
            grey[at] = (byte) Math.max(0, Math.min(255, Math.round(level)));
        }
        return new Picture(WIDTH, HEIGHT, grey, 0, 0);
    }
}
