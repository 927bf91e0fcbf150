package wallplate.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The folder {@code sample-scans} is what the generator writes from its seed. */
class SampleClassTest {

    private static final Path FOLDER = Path.of("sample-scans");
    private static final int FIRST_SHEET = 1;

    @Test
    void taskFileIsAsGenerated() throws IOException {
        String kept = Files.readString(FOLDER.resolve("task.yml"));

        assertThat(kept).isEqualTo(SampleClass.task().toYaml());
    }

    @Test
    void firstSheetIsAsGenerated() throws IOException {
        BufferedImage kept = picture(Files.readAllBytes(FOLDER.resolve("01-amara.jpg")));
        BufferedImage anew = picture(SampleClass.scan(FIRST_SHEET));

        // The mean, because another processor may round a sine differently in its last place.
        assertThat(meanDifference(kept, anew)).as("grey levels").isLessThan(0.01);
    }

    @Test
    void folderStaysSmallAndNamesEveryScanInItsClassList() throws IOException {
        long bytes = 0;
        String list = Files.readString(FOLDER.resolve("class-list.csv"), StandardCharsets.UTF_8);
        try (var files = Files.list(FOLDER)) {
            for (Path file : files.toList()) {
                bytes += Files.size(file);
                String name = file.getFileName().toString();
                assertThat(!name.endsWith(".jpg") || list.contains("," + name + "\n")).as(name).isTrue();
            }
        }
        assertThat(bytes).isLessThan(8_000_000);
        assertThat(list.lines()).hasSize(13);
    }

    private static BufferedImage picture(byte[] jpeg) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(jpeg));
    }

    private static double meanDifference(BufferedImage one, BufferedImage other) {
        assertThat(one.getWidth()).isEqualTo(other.getWidth());
        assertThat(one.getHeight()).isEqualTo(other.getHeight());
        double sum = 0;
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                sum += Math.abs(one.getRaster().getSample(x, y, 0) - other.getRaster().getSample(x, y, 0));
            }
        }
        return sum / one.getWidth() / one.getHeight();
    }
}
