package wallplate.drafting.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.SheetOwner;
import wallplate.solver.Caution;
import wallplate.task.Tasks;

class DrawingSheetsTest {

    private static final String NAME = "Żaneta O’Brien-Дмитрук";

    private static List<SheetOwner> learners(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(number -> new SheetOwner(
                        String.format(Locale.ROOT, "L%03d", number), "Learner " + number, "11 B", "", 1))
                .toList();
    }

    @Test
    void everyLearnerHasASheetInTheOrderOfTheList() throws IOException {
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).pdf(learners(3));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(3);
            for (int page = 1; page <= 3; page++) {
                assertThat(text(document, page)).contains("Learner " + page, "11 B", Caution.TEXT);
            }
        }
    }

    @Test
    void briefAndNotesAreThereOnlyIfWanted() throws IOException {
        DrawingSheets sheets = DrawingSheets.of(Tasks.boathouse());
        String note = "Use a sharp 2H.";
        try (PDDocument without = Loader.loadPDF(sheets.pdf(learners(1)));
                PDDocument with = Loader.loadPDF(
                        sheets.withBrief(true).withNotes(List.of(note)).pdf(learners(1)))) {
            assertThat(text(without, 1)).doesNotContain("overhang 400").doesNotContain(note);
            assertThat(text(with, 1)).contains("pitch: 26°", "overhang 400", note);
        }
    }

    @Test
    void namesInOtherAlphabetsAreLettered() throws IOException {
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).pdf(List.of(new SheetOwner("L1", NAME, "", "", 1)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(text(document, 1)).contains(NAME);
        }
    }

    @Test
    void letterThatNoFaceHasBecomesAQuestionMark() throws IOException {
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).pdf(List.of(new SheetOwner("L1", "Mei 梅", "", "", 1)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(text(document, 1)).contains("Mei ?");
        }
    }

    @Test
    void everyFaceIsEmbedded() throws IOException {
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).pdf(List.of(new SheetOwner("L1", NAME, "", "", 1)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<PDFont> faces = new ArrayList<>();
            collectFaces(document.getPage(0).getResources(), faces);
            assertThat(faces).isNotEmpty().allMatch(PDFont::isEmbedded);
        }
    }

    private static void collectFaces(PDResources resources, List<PDFont> faces) throws IOException {
        for (COSName name : resources.getFontNames()) {
            faces.add(resources.getFont(name));
        }
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject form) {
                collectFaces(form.getResources(), faces);
            }
        }
    }

    @Test
    void twoHundredSheetsArePrintedInTenSeconds() throws IOException {
        long start = System.nanoTime();
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).withBrief(true).pdf(learners(200));
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(10));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getPages()).hasSize(200).allMatch(PDPage::hasContents);
        }
    }

    @Test
    void sameListGivesTheSameBytes() {
        DrawingSheets sheets = DrawingSheets.of(Tasks.boathouse());
        assertThat(sheets.pdf(learners(2))).isEqualTo(sheets.pdf(learners(2)));
    }

    private static String text(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(document).replaceAll("\\s+", " ");
    }
}
