package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.DrawnSheet.aSheet;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.PageMap;
import wallplate.sheet.page.PageMap.Lens;
import wallplate.sheet.page.PaperRectification;
import wallplate.task.SheetFormat;

/**
 * Pencils from hard to soft, and graphite that mirrors the lamp, through the whole reading of a sheet.
 *
 * <p>The darkness and breadth of each grade are those of the sample sheets' pencils ({@code samples.PencilGrade}), which are
 * from experience, not from a standard.
 */
class PencilsTest {

    /** What construction lines have of the outlines' darkness. */
    private static final double CONSTRUCTION = 0.3;

    private static final SheetFormat A4 = new SheetFormat("A4", 297, 210, 100);

    @ParameterizedTest
    @CsvSource({
        "0.45, 0.22", // 2H, sharp and lightly pressed
        "0.58, 0.26", // 2H
        "0.68, 0.30", // H
        "0.80, 0.36", // HB
        "0.88, 0.44", // B
        "0.93, 0.52" // 2B
    })
    void keepsEachPencilsDarknessAndBreadthAndItsConstructionLinesApart(double darkness, double breadth) {
        DrawnSheet sheet =
                aSheet().scannedAt(300).turned(0.7).pencilled(darkness, breadth).constructedFirst(CONSTRUCTION);

        LevelPage page = level(new SheetReader().read(sheet.page(), sheet.format()));
        Segment rafter = sheet.lines().get(7);
        Look outline = look(page, onPage(sheet, page, rafter), 0.2, 0.8);
        Segment beyond = DrawnSheet.constructionOf(rafter);
        double end = 8 / beyond.length();
        Look construction = look(page, onPage(sheet, page, beyond), end / 4, end);

        assertThat(page.calibration().source()).isEqualTo(Calibration.Source.REFERENCE_BAR);
        // A line of a quarter of a millimetre is three pixels broad, so that its darkest is lighter in the scan, too.
        assertThat(outline.darkest()).isCloseTo(255 * darkestInScan(sheet, rafter), within(12.0));
        assertThat(outline.breadth()).isCloseTo(breadth, within(0.06));
        assertThat(construction.darkest()).isBetween(14.0, 0.45 * outline.darkest());
        assertThat(construction.covered()).isGreaterThan(0.95);
    }

    /** Where the lamp is mirrored, a stroke is brighter than the paper between two dark rims; it stays one stroke. */
    @Test
    void makesOneStrokeOfGraphiteThatShinesInAPhotograph() {
        Photograph photograph = new Photograph();

        LevelPage page = level(new SheetReader().read(new ScanPage("photo.jpg", 1, photograph.picture()), A4));

        assertThat(page.photograph()).isTrue();
        PlaneMap toPage = page.toScan().inverse();
        int shining = 0;
        for (Segment line : photograph.lines) {
            for (double at = 0.02; at < 1; at += 0.02) {
                Point place = line.at(at);
                if (!photograph.shinesAt(place) || photograph.isNearOther(line, place)) {
                    continue;
                }
                shining++;
                Vector along = line.vector().unit();
                Segment across = new Segment(
                        toPage.apply(photograph.map.apply(place.plus(along.leftNormal().times(-0.9)))),
                        toPage.apply(photograph.map.apply(place.plus(along.leftNormal().times(0.9)))));
                Profile profile = Profile.of(page.ink(), across);
                assertThat(profile.summits()).as("strokes across %s", place).isEqualTo(1);
                assertThat(profile.darkest()).as("ink at %s", place).isGreaterThan(60);
                assertThat(profile.centre()).as("centre at %s", place).isCloseTo(across.length() / 2, within(0.08));
            }
        }
        assertThat(shining).isGreaterThan(100);
    }

    private static LevelPage level(SheetReading reading) {
        assertThat(reading).isInstanceOf(SheetReading.Readable.class);
        return ((SheetReading.Readable) reading).page();
    }

    private static Segment onPage(DrawnSheet sheet, LevelPage page, Segment line) {
        PlaneMap toPage = page.toScan().inverse();
        return new Segment(
                toPage.apply(sheet.pixel(line.start().x(), line.start().y())),
                toPage.apply(sheet.pixel(line.end().x(), line.end().y())));
    }

    /** The mean over a line of the largest share of the paper's light that is missing across it, in the scan's own pixels. */
    private static double darkestInScan(DrawnSheet sheet, Segment line) {
        Picture picture = sheet.picture();
        Vector beside = line.vector().unit().leftNormal();
        double sum = 0;
        int count = 0;
        for (double share = 0.2; share < 0.8; share += 0.01) {
            double darkest = 255;
            for (double off = -0.4; off <= 0.4; off += 0.02) {
                Point place = line.at(share).plus(beside.times(off));
                Point pixel = sheet.pixel(place.x(), place.y());
                int at = (int) pixel.y() * picture.widthPx() + (int) pixel.x();
                darkest = Math.min(darkest, picture.grey()[at] & 0xff);
            }
            sum += 1 - darkest / DrawnSheet.PAPER_GREY;
            count++;
        }
        return sum / count;
    }

    private record Look(double darkest, double breadth, double covered) {}

    /** Means of a line's darkest ink and its breadth at half that, between two shares of its length. */
    private static Look look(LevelPage page, Segment line, double from, double to) {
        Vector beside = line.vector().unit().leftNormal().times(0.9);
        double darkest = 0;
        double breadth = 0;
        int covered = 0;
        int count = 0;
        for (double share = from; share < to; share += (to - from) / 60) {
            Point place = line.at(share);
            Profile profile = Profile.of(page.ink(), new Segment(place.plus(beside.negated()), place.plus(beside)));
            darkest += profile.darkest();
            breadth += profile.breadth();
            covered += profile.darkest() > 10 ? 1 : 0;
            count++;
        }
        return new Look(darkest / count, breadth / count, (double) covered / count);
    }

    /** The ink across a line, a value every fiftieth of a millimetre. */
    private record Profile(double[] ink, double step) {

        static Profile of(InkImage image, Segment across) {
            int count = (int) Math.round(across.length() * 50);
            double[] ink = new double[count + 1];
            for (int i = 0; i <= count; i++) {
                Point place = across.at((double) i / count);
                ink[i] = image.at(place.x(), place.y());
            }
            return new Profile(ink, across.length() / count);
        }

        double darkest() {
            return java.util.Arrays.stream(ink).max().orElse(0);
        }

        double breadth() {
            double half = darkest() / 2;
            return java.util.Arrays.stream(ink).filter(value -> value > half).count() * step;
        }

        double centre() {
            double sum = 0;
            double moment = 0;
            for (int i = 0; i < ink.length; i++) {
                sum += ink[i];
                moment += ink[i] * i * step;
            }
            return moment / sum;
        }

        /** How often the ink rises above half of its darkest. */
        int summits() {
            double half = darkest() / 2;
            int count = 0;
            for (int i = 1; i < ink.length; i++) {
                count += ink[i - 1] <= half && ink[i] > half ? 1 : 0;
            }
            return count;
        }
    }

    /** A camera leaning over a sheet on a dark desk, with a lamp mirrored in its right half. */
    private static final class Photograph {

        private static final int WIDTH = 3200;
        private static final int HEIGHT = 2400;
        private static final double HALF_STROKE = 0.27;
        private static final double HALF_SHINE = 0.13;

        private final PageMap map = new PageMap(
                PaperRectification.projection(
                        List.of(new Point(0, 0), new Point(297, 0), new Point(297, 210), new Point(0, 210)),
                        List.of(new Point(180, 2210), new Point(3010, 2230), new Point(2900, 230), new Point(260, 200))),
                Lens.STRAIGHT);
        private final List<Segment> lines = aSheet().lines();

        boolean shinesAt(Point place) {
            return place.distanceTo(new Point(190, 120)) < 38;
        }

        boolean isNearOther(Segment line, Point place) {
            return lines.stream().anyMatch(other -> other != line && other.distanceTo(place) < 1.6);
        }

        Picture picture() {
            byte[] grey = new byte[WIDTH * HEIGHT];
            PlaneMap toSheet = map.inverse();
            java.util.Random random = new java.util.Random(3);
            for (int row = 0; row < HEIGHT; row++) {
                for (int column = 0; column < WIDTH; column++) {
                    Point place = toSheet.apply(new Point(column + 0.5, row + 0.5));
                    double value = light(place) + 2 * random.nextGaussian();
                    grey[row * WIDTH + column] = (byte) Math.round(Math.max(0, Math.min(255, value)));
                }
            }
            return new Picture(WIDTH, HEIGHT, grey, 72, 72);
        }

        private double light(Point place) {
            if (place.x() < 0 || place.x() > 297 || place.y() < 0 || place.y() > 210) {
                return 60;
            }
            double paper = 215 - 0.1 * place.x();
            double off = lines.stream().mapToDouble(line -> line.distanceTo(place)).min().orElseThrow();
            double stroke = band(off, HALF_STROKE);
            double shine = shinesAt(place) ? band(off, HALF_SHINE) : 0;
            return paper * (1 - 0.55 * stroke * (1 - shine) + 0.12 * shine);
        }

        private static double band(double off, double half) {
            double soft = 0.05;
            return 0.5 * (Math.tanh((off + half) / soft) - Math.tanh((off - half) / soft));
        }
    }
}
