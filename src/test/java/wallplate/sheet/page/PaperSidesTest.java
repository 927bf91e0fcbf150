package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;

class PaperSidesTest {

    private static final int WIDTH = 1754;
    private static final int HEIGHT = 1240;
    private static final double DPI = 150;
    private static final byte PAPER = (byte) 240;
    /** Along a line that leaves the picture on both sides, falling by one in eight. */
    private static final Line ACROSS = Line.through(new Point(0, 380), new Point(WIDTH, 160));

    @Test
    void aRafterAcrossTheWholeSheetIsNoEdgeOfThePaper() {
        assertThat(sides((byte) 240).count()).isZero();
    }

    @Test
    void theSameLineIsAnEdgeWhereTheLidBeyondItIsDarker() {
        PaperSides sides = sides((byte) 90);

        assertThat(sides.count()).isOne();
        assertThat(Math.abs(sides.sides().get(2).orElseThrow().line().distanceTo(new Point(WIDTH / 2.0, 270))))
                .isLessThan(4);
    }

    /** A feeder's streak runs along one column; the shadow of an edge on a white lid is as pale and hardly ever does. */
    @Test
    void aStreakAlongAColumnOfPixelsIsNoEdgeWhileAShadowThatLeansIs() {
        assertThat(paleLine(0).count()).isZero();
        assertThat(paleLine(3).count()).isOne();
    }

    /** White all over, but for a pale line from top to bottom that leans by so many pixels. */
    private static PaperSides paleLine(double leanPx) {
        byte[] grey = new byte[WIDTH * HEIGHT];
        Arrays.fill(grey, PAPER);
        List<Point> outline = new ArrayList<>();
        for (int y = 0; y < HEIGHT; y++) {
            double x = 1200 + leanPx * y / HEIGHT;
            grey[y * WIDTH + (int) x] = (byte) 180;
            if (y % 6 == 0) {
                outline.add(new Point(x - 3, y));
                outline.add(new Point(4, y));
                outline.add(new Point(1200.0 * y / HEIGHT, 4));
                outline.add(new Point(1200.0 * y / HEIGHT, HEIGHT - 4));
            }
        }
        return PaperSides.near(outline, new Picture(WIDTH, HEIGHT, grey, DPI, DPI));
    }

    /** Paper with a dark line four pixels wide, 0.7 mm, and another grey above it. */
    private static PaperSides sides(byte beyond) {
        byte[] grey = new byte[WIDTH * HEIGHT];
        Arrays.fill(grey, PAPER);
        for (int at = 0; at < grey.length; at++) {
            double above = ACROSS.distanceTo(new Point(at % WIDTH + 0.5, at / WIDTH + 0.5));
            if (Math.abs(above) < 2) {
                grey[at] = 60;
            } else if (above < 0) {
                grey[at] = beyond;
            }
        }
        // As the parting of paper from desk may run where it finds nothing better: beside the line.
        Vector beside = ACROSS.direction().leftNormal().times(6);
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            outline.add(ACROSS.pointAt(i * (double) WIDTH / 200).plus(beside));
            outline.add(new Point(4, 400 + 4.0 * i));
            outline.add(new Point(WIDTH - 4, 180 + 5.0 * i));
            outline.add(new Point(i * (double) WIDTH / 200, HEIGHT - 4));
        }
        return PaperSides.near(outline, new Picture(WIDTH, HEIGHT, grey, DPI, DPI));
    }
}
