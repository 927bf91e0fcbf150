package wallplate.drafting.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.junit.jupiter.api.Test;
import wallplate.drafting.DraftingTasks;
import wallplate.drafting.ModelAnswer;
import wallplate.drafting.pdf.InkedLines.InkedLine;

/** The printed model answer measured in points, one point being 1/72 inch and one inch 25.4 mm (ISO 32000-1, 8.3.2.3). */
class TrueScaleTest {

    private final byte[] pdf =
            ModelAnswer.of(DraftingTasks.solved(DraftingTasks.EVERYTHING)).pdf();

    @Test
    void hundredMillimetreBarIs283Point46PointsLong() throws IOException {
        // 100 x 72 / 25.4 = 283.4646
        List<InkedLine> bars = InkedLines.of(pdf, 0).stream()
                .filter(line -> Math.abs(line.length() - 283.4646) < 0.01)
                .toList();
        assertThat(bars).hasSize(1);
        assertThat(bars.get(0).startY()).isCloseTo(bars.get(0).endY(), within(1e-6));
        assertThat(bars.get(0).startY()).as("in the lowest 45 mm").isLessThan(45 * 72 / 25.4);
    }

    @Test
    void pageIsTheIsoSize() throws IOException {
        // ISO 216: A4 is 210 x 297 mm
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDPage page = document.getPage(0);
            assertThat(page.getMediaBox().getWidth()).isCloseTo(841.89f, within(0.01f));
            assertThat(page.getMediaBox().getHeight()).isCloseTo(595.28f, within(0.01f));
        }
    }

    @Test
    void viewersAreAskedNotToScaleWhenPrinting() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDViewerPreferences preferences = document.getDocumentCatalog().getViewerPreferences();
            assertThat(preferences.getPrintScaling()).isEqualTo("None");
        }
    }

    @Test
    void lineThicknessesAreOfTheIso128Series() throws IOException {
        // ISO 128-2:2020 as quoted in secondary sources: 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2 mm
        Set<Long> hundredths = InkedLines.of(pdf, 0).stream()
                .map(line -> Math.round(line.width() * 25.4 / 72 * 100))
                .collect(Collectors.toSet());
        assertThat(hundredths).isSubsetOf(13L, 18L, 25L, 35L, 50L, 70L, 100L).contains(50L, 25L);
    }

    @Test
    void frameKeepsTheMarginsOfIso5457() throws IOException {
        // ISO 5457: 20 mm at the filing edge, 10 mm elsewhere (secondary sources; A4 landscape leaves 267 x 190)
        List<InkedLine> frame = InkedLines.of(pdf, 0).stream()
                .filter(line -> Math.round(line.width() * 25.4 / 72 * 100) == 70)
                .toList();
        assertThat(frame).hasSize(4);
        assertThat(frame).allSatisfy(line -> {
            double lengthMm = line.length() * 25.4 / 72;
            assertThat(Math.min(Math.abs(lengthMm - 267), Math.abs(lengthMm - 190))).isLessThan(0.01);
        });
        double left = frame.stream().mapToDouble(line -> Math.min(line.startX(), line.endX())).min().orElseThrow();
        assertThat(left * 25.4 / 72).isCloseTo(20, within(0.01));
    }

    @Test
    void sameDrawingGivesTheSameBytes() {
        assertThat(ModelAnswer.of(DraftingTasks.solved(DraftingTasks.EVERYTHING)).pdf()).isEqualTo(pdf);
    }
}
