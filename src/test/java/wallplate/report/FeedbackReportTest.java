package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Asked;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/** The feedback report as it is handed out, read back with PDFBox. */
class FeedbackReportTest {

    private static final ExpectedDrawing ASKED = Solver.solve(Asked.boathouse());

    private static final AssessedSheet.Read WITH_MISTAKES = DrawnPages.sheet(
            "sheet-07.png",
            ASKED,
            Map.of(
                    "support.spacing", new Finding.Quantity(50.1, 0.05),
                    "gutter.width", new Finding.Absent(),
                    "gutter.depth", new Finding.Absent(),
                    "wall-plate.crossed", new Finding.YesNo(false),
                    "post.position", new Finding.Quantity(70.2, 0.05),
                    "brander.width", Finding.Uncertain.because("The branders lie under a fold.")));

    @Test
    void hasTwoPagesOfA4WithEveryCriterion() throws IOException {
        try (PDDocument report = report(WITH_MISTAKES)) {
            assertThat(report.getNumberOfPages()).isEqualTo(2);
            assertThat(report.getPage(0).getMediaBox().getWidth()).isEqualTo(PDRectangle.A4.getWidth());
            assertThat(report.getDocumentCatalog().getLanguage()).isEqualTo("en");
            String first = text(report, 1);
            WITH_MISTAKES.marked().marks().forEach(mark -> assertThat(first).contains(mark.title()));
            assertThat(first)
                    .contains("Section through the eaves of the boathouse")
                    .contains("1:20");
            assertThat(first).contains("27 of 33 marks").contains("1 still for your teacher to decide");
            assertThat(first)
                    .contains("right")
                    .contains("not yet")
                    .contains("teacher")
                    .contains("not drawn");
            assertThat(first).contains("A drawing exercise, not a design");
        }
    }

    @Test
    void saysWhereAPersonLoweredTheMarksForWhatIsRight() throws IOException {
        List<Mark> marks = new ArrayList<>(WITH_MISTAKES.marked().marks());
        int right = marks.indexOf(marks.stream().filter(mark -> mark.verdict() == Verdict.MET).findFirst().orElseThrow());
        Mark met = marks.get(right);
        marks.set(right, new Mark(
                met.criterion(), met.title(), met.key(), met.verdict(), met.available() / 2, met.available(),
                met.expected(), met.measured(), met.tolerance(), met.slips(), met.feedback()));
        AssessedSheet.Read moderated = new AssessedSheet.Read(
                WITH_MISTAKES.scan(), WITH_MISTAKES.page(), ASKED, WITH_MISTAKES.levelPage(), WITH_MISTAKES.measured(),
                new MarkedSheet(WITH_MISTAKES.marked().guideline(), marks));

        try (PDDocument before = report(WITH_MISTAKES);
                PDDocument after = report(moderated)) {
            assertThat(text(before, 1)).doesNotContain("changed");
            assertThat(text(after, 1)).containsOnlyOnce("changed");
        }
    }

    @Test
    void showsTheThreeGreatestGainsWithPicturesAndWhatWasDoneWell() throws IOException {
        try (PDDocument report = report(WITH_MISTAKES)) {
            String second = text(report, 2).replaceAll("\\s+", " ");
            assertThat(second).contains("The 3 things that would gain you most next time");
            assertThat(second).contains("Gutter").contains("2 marks to gain").contains("6.25 mm");
            assertThat(second).contains("What you did well").contains("rafter");
            assertThat(images(report.getPage(1))).hasSize(3);
        }
    }

    @Test
    void showsBothDrawingsWholeWhereThereIsNothingToPutRight() throws IOException {
        try (PDDocument report = report(DrawnPages.sheet("a.png", ASKED, Map.of()))) {
            assertThat(text(report, 2)).contains("Nothing to put right");
            assertThat(images(report.getPage(1))).hasSize(1);
        }
    }

    @Test
    void saysWhyASheetCouldNotBeReadAndWhatToDo() throws IOException {
        AssessedSheet unreadable = new AssessedSheet.Unreadable("b.png", 1, ASKED, "The page is blank.");
        try (PDDocument report = report(unreadable)) {
            assertThat(report.getNumberOfPages()).isEqualTo(1);
            assertThat(text(report, 1))
                    .contains("The page is blank.")
                    .contains("What to do")
                    .contains("No mark is lost");
        }
    }

    @Test
    void embedsEveryFont() throws IOException {
        try (PDDocument report = report(WITH_MISTAKES)) {
            for (PDPage page : report.getPages()) {
                for (var name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                    assertThat(font.getName()).contains("DejaVu");
                }
            }
        }
    }

    /** What ISO 14289-1 (PDF/UA-1) asks of structure, pictures, language and title, as far as it can be counted. */
    @Test
    void saysWhatItsContentsAreToAScreenReader() throws IOException {
        try (PDDocument report = report(WITH_MISTAKES)) {
            PDDocumentCatalog catalog = report.getDocumentCatalog();
            assertThat(catalog.getMarkInfo().isMarked()).isTrue();
            assertThat(catalog.getLanguage()).isEqualTo("en");
            assertThat(catalog.getViewerPreferences().displayDocTitle()).isTrue();
            assertThat(report.getDocumentInformation().getTitle()).isNotBlank();
            List<PDStructureElement> elements = new ArrayList<>();
            collect(catalog.getStructureTreeRoot(), elements);
            Map<String, Long> roles = elements.stream()
                    .collect(Collectors.groupingBy(PDStructureElement::getStructureType, Collectors.counting()));
            assertThat(roles).containsEntry("Document", 1L).containsEntry("H1", 2L).containsEntry("Table", 1L);
            assertThat(roles).containsEntry("TH", 7L).containsEntry("TR", 1L + WITH_MISTAKES.marked().marks().size());
            assertThat(roles.get("Figure")).isEqualTo(7L);
            assertThat(elements)
                    .filteredOn(element -> element.getStructureType().equals("Figure"))
                    .allSatisfy(figure -> assertThat(figure.getAlternateDescription()).hasSizeGreaterThan(15));
        }
    }

    /** Every letter on the page belongs to a tagged piece; what is drawn outside of them is ornament. */
    @Test
    void tagsEveryText() throws IOException {
        try (PDDocument report = report(WITH_MISTAKES)) {
            PDPage page = report.getPage(0);
            PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
            extractor.processPage(page);
            long tagged = letters(extractor.getMarkedContents(), false);
            long ornament = letters(extractor.getMarkedContents(), true);
            assertThat(tagged).isGreaterThan(500);
            // only the sign for consistent working and the query are drawn with letters beside their words
            assertThat(ornament).isLessThan(20);
        }
    }

    private static long letters(List<PDMarkedContent> contents, boolean ornament) {
        return contents.stream()
                .filter(content -> ornament == "Artifact".equals(content.getTag()))
                .flatMap(content -> content.getContents().stream())
                .filter(TextPosition.class::isInstance)
                .count();
    }

    private static void collect(PDStructureNode node, List<PDStructureElement> elements) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                elements.add(element);
                collect(element, elements);
            }
        }
    }

    @Test
    void writesTheSameBytesForTheSameSheet() throws IOException {
        assertThat(bytes(Locale.ENGLISH, WITH_MISTAKES)).isEqualTo(bytes(Locale.ENGLISH, WITH_MISTAKES));
    }

    @Test
    void speaksGerman() throws IOException {
        try (PDDocument report = Loader.loadPDF(bytes(Locale.GERMAN, WITH_MISTAKES))) {
            assertThat(text(report, 1))
                    .contains("27 von 33 Punkten")
                    .contains("6,25 mm")
                    .contains("noch nicht");
        }
    }

    @Test
    void survivesTextsThatItsFontCannotShow() throws IOException {
        AssessedSheet odd = new AssessedSheet.Unreadable("\ud83d\ude00\u0007.png", 1, ASKED, "Tab\tand \u4e2d.");
        try (PDDocument report = report(odd)) {
            assertThat(text(report, 1)).contains("Tab and ?.");
        }
    }

    @Test
    void keepsAGuidelineWithManyCriteriaOnItsPage() throws IOException {
        List<Map<String, Object>> criteria = new ArrayList<>();
        for (int number = 1; number <= 120; number++) {
            criteria.add(Map.of("id", "look-" + number, "teacher", "Look at it.", "title", "Thing number " + number));
        }
        ExpectedDrawing many = Solver.solve(Asked.withMarking(Asked.boathouse(), Map.of("criteria", criteria)));
        AssessedSheet.Read drawn = DrawnPages.sheet("c.png", many, Map.of());
        var guideline = ((GuidelineReading.Accepted) Guideline.read(many)).guideline();
        AssessedSheet.Read sheet = new AssessedSheet.Read(
                drawn.scan(),
                1,
                many,
                drawn.levelPage(),
                drawn.measured(),
                new Marker().mark(guideline, many, drawn.measured()));
        try (PDDocument report = report(sheet)) {
            assertThat(report.getNumberOfPages()).isEqualTo(2);
            assertThat(text(report, 1)).contains("Thing number 1").containsPattern("and \\d+ more: see the mark sheet");
        }
    }

    @Test
    void putsAClassIntoOnePdfWithAPageRangeForEachLearner() throws IOException {
        AssessedSheet unreadable = new AssessedSheet.Unreadable("b.png", 1, ASKED, "The page is blank.");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<ClassReports.PageRange> ranges = new ClassReports(Locale.ENGLISH)
                .writePdf(
                        visitor -> {
                            visitor.visit(new ClassReports.NamedSheet("Ada Example", WITH_MISTAKES));
                            visitor.visit(new ClassReports.NamedSheet("Ben Example", unreadable));
                            visitor.visit(new ClassReports.NamedSheet("Cyd Example", WITH_MISTAKES));
                        },
                        out);
        assertThat(ranges)
                .containsExactly(
                        new ClassReports.PageRange("Ada Example", 1, 2),
                        new ClassReports.PageRange("Ben Example", 3, 3),
                        new ClassReports.PageRange("Cyd Example", 4, 5));
        try (PDDocument report = Loader.loadPDF(out.toByteArray())) {
            assertThat(report.getNumberOfPages()).isEqualTo(5);
            assertThat(text(report, 3)).contains("The page is blank.").contains("Feedback for Ben Example");
            assertThat(text(report, 4)).contains("Feedback for Cyd Example");
            assertThat(report.getDocumentCatalog()
                            .getDocumentOutline()
                            .getFirstChild()
                            .getTitle())
                    .isEqualTo("Ada Example");
        }
    }

    @Test
    void packsSingleReportsUnderSafeNames() throws IOException {
        AssessedSheet unreadable = new AssessedSheet.Unreadable("b.png", 1, ASKED, "The page is blank.");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new ClassReports(Locale.ENGLISH)
                .writeZip(
                        visitor -> {
                            visitor.visit(new ClassReports.NamedSheet("Zo\u00eb / Example", unreadable));
                            visitor.visit(new ClassReports.NamedSheet("../up", unreadable));
                            visitor.visit(new ClassReports.NamedSheet("__up", unreadable));
                        },
                        out);
        List<String> names = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(out.toByteArray()))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                names.add(entry.getName());
                assertThat(zip.readAllBytes()).startsWith("%PDF".getBytes());
            }
        }
        assertThat(names).containsExactly("Zo\u00eb _ Example.pdf", "__up.pdf", "__up-2.pdf");
    }

    private static PDDocument report(AssessedSheet sheet) throws IOException {
        return Loader.loadPDF(bytes(Locale.ENGLISH, sheet));
    }

    private static byte[] bytes(Locale language, AssessedSheet sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new FeedbackReport(language).write(sheet, out);
        return out.toByteArray();
    }

    private static String text(PDDocument report, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.setSortByPosition(true);
        return stripper.getText(report);
    }

    private static List<PDImageXObject> images(PDPage page) throws IOException {
        List<PDImageXObject> images = new ArrayList<>();
        for (var name : page.getResources().getXObjectNames()) {
            if (page.getResources().getXObject(name) instanceof PDImageXObject image) {
                images.add(image);
            }
        }
        return images;
    }
}
