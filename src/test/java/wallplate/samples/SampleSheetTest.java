package wallplate.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.samples.Learner.Straying;

/** The generator held against itself: its ink lies where its truth says, and the same seed gives the same bytes. */
class SampleSheetTest {

    private static final double ALLOWED_MM = 0.05;

    @Test
    void scannedInkLiesOnTheLinesOfTheTruth() {
        Chance chance = new Chance(11);
        SheetDrawing sheet = sheet(chance);
        Capture capture = FlatbedCapture.draw(chance).atDpi(300).take(sheet, chance.fork());

        assertInkOnLines(sheet, capture);
    }

    @Test
    void photographedInkLiesOnTheLinesOfTheTruth() {
        Chance chance = new Chance(12);
        SheetDrawing sheet = sheet(chance);
        Capture capture = PhoneCapture.draw(chance).withBlur(1).take(sheet, chance.fork());

        assertInkOnLines(sheet, capture);
    }

    @Test
    void sameSeedGivesTheSameBytes() {
        assertThat(bytes(21)).isEqualTo(bytes(21));
        assertThat(bytes(22)).isNotEqualTo(bytes(21));
    }

    @Test
    void faxedTiffKeepsEveryPixel() throws IOException {
        Chance chance = new Chance(31);
        BufferedImage picture = FlatbedCapture.draw(chance).atDpi(75).take(sheet(chance), chance.fork()).picture();
        BufferedImage binary = PictureFile.blackAndWhite(picture, 30);

        BufferedImage read = ImageIO.read(new ByteArrayInputStream(PictureFile.tiff(binary)));

        assertThat(read.getRGB(0, 0, read.getWidth(), read.getHeight(), null, 0, read.getWidth()))
                .isEqualTo(binary.getRGB(0, 0, binary.getWidth(), binary.getHeight(), null, 0, binary.getWidth()));
    }

    @Test
    void turnedPhotographLiesOnItsSideInTheFile() throws IOException {
        BufferedImage picture = new BufferedImage(60, 40, BufferedImage.TYPE_3BYTE_BGR);

        BufferedImage read = ImageIO.read(new ByteArrayInputStream(PictureFile.turnedJpeg(picture, 0.9f)));

        assertThat(read.getWidth()).isEqualTo(40);
        assertThat(read.getHeight()).isEqualTo(60);
    }

    @Test
    void shortLinesStrayMoreUnlessSquaresRock() {
        assertThat(spreadOfShortToLong(Straying.ENDS)).isGreaterThan(4);
        assertThat(spreadOfShortToLong(Straying.SQUARES)).isBetween(0.8, 2.0);
    }

    /** Root mean square error of direction of uprights shorter than 8 mm, over that of those longer than 40 mm. */
    private static double spreadOfShortToLong(Straying straying) {
        List<Double> shortOnes = new ArrayList<>();
        List<Double> longOnes = new ArrayList<>();
        for (int seed = 0; seed < 40; seed++) {
            Chance chance = new Chance(seed);
            SheetDrawing sheet = sheet(Learner.draw("fair", chance).straying(straying), chance);
            for (Map.Entry<String, Segment> entry : sheet.lines().entrySet()) {
                if (entry.getKey().contains("cross")) {
                    continue;
                }
                Segment line = entry.getValue();
                double off = line.inclinationDegrees() - 90 - sheet.tiltDegrees();
                double error = off - 180 * Math.round(off / 180);
                if (Math.abs(error) < 5 && line.length() < 8) {
                    shortOnes.add(error);
                } else if (Math.abs(error) < 5 && line.length() > 40) {
                    longOnes.add(error);
                }
            }
        }
        assertThat(Math.min(shortOnes.size(), longOnes.size())).isGreaterThan(50);
        return rootMeanSquare(shortOnes) / rootMeanSquare(longOnes);
    }

    private static double rootMeanSquare(List<Double> errors) {
        return Math.sqrt(errors.stream().mapToDouble(error -> error * error).average().orElseThrow());
    }

    private static byte[] bytes(long seed) {
        Chance chance = new Chance(seed);
        SheetDrawing sheet = sheet(chance);
        BufferedImage picture = FlatbedCapture.draw(chance).atDpi(75).take(sheet, chance.fork()).picture();
        return PictureFile.jpeg(picture, 0.8f, 75);
    }

    private static SheetDrawing sheet(Chance chance) {
        return sheet(Learner.draw("neat", chance), chance);
    }

    private static SheetDrawing sheet(Learner learner, Chance chance) {
        SampleTask task = new RandomTasks(chance.seed()).draw(0);
        Intention intention = new Intention(task);
        intention.setOff(learner, chance);
        return new SheetComposer(intention, learner, chance).compose(true);
    }

    /** Lines longer than 8 mm that no other line comes near stand for all: the map is one for the whole sheet. */
    private static void assertInkOnLines(SheetDrawing sheet, Capture capture) {
        InkRefit refit = new InkRefit(capture.picture(), capture.map());
        List<String> beside = new ArrayList<>();
        int checked = 0;
        for (Map.Entry<String, Segment> entry : sheet.lines().entrySet()) {
            Segment line = entry.getValue();
            if (line.length() < 8 || isCrowded(entry.getKey(), sheet.lines())) {
                continue;
            }
            double offset = refit.offset(line).orElse(9.0);
            checked++;
            if (Math.abs(offset) > ALLOWED_MM) {
                beside.add(entry.getKey() + " by " + offset + " mm");
            }
        }
        assertThat(checked).isGreaterThan(7);
        assertThat(beside).isEmpty();
    }

    private static boolean isCrowded(String name, Map<String, Segment> lines) {
        Segment line = lines.get(name);
        return lines.entrySet().stream()
                .filter(other -> !other.getKey().equals(name))
                .anyMatch(other -> other.getValue().length() > line.length() / 3
                        && Math.abs(Math.sin(Math.toRadians(other.getValue().inclinationDegrees() - line.inclinationDegrees()))) < 0.05
                        && line.distanceTo(other.getValue().midpoint()) < 0.9);
    }
}
