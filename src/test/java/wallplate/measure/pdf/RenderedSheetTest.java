package wallplate.measure.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.measure.ExactPage;
import wallplate.measure.Finding;
import wallplate.measure.MeasureTasks;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurer;
import wallplate.sheet.NativeLibraries;
import wallplate.sheet.ScanPage;
import wallplate.sheet.SheetReader;
import wallplate.sheet.SheetReading;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.SheetFormat;

/** Sheets of exactly known geometry, rendered by PDFBox at a known resolution, read and measured. */
class RenderedSheetTest {

    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final double WITHIN_MM = 0.1;
    /** A free end, which is told to 0.07 mm, within two standard deviations. */
    private static final double WITHIN_FREE_END_MM = 0.15;

    private static final double WITHIN_DEGREES = 0.08;
    /** Found to some tenths only on exact pages too; the accuracy table keeps its figures. */
    private static final Set<String> KNOWN_WEAK = Set.of("fascia.depth");

    @ParameterizedTest
    @ValueSource(ints = {200, 300, 400})
    void measuresWhatPdfBoxRendered(int dpi) throws IOException {
        NativeLibraries.load();
        ExpectedDrawing drawing = MeasureTasks.solved(MeasureTasks.GRAIN_STORE);
        SheetFormat format = drawing.task().sheet();
        SheetReading reading = new SheetReader().read(new ScanPage("rendered.png", 1, rendered(drawing, dpi)), format);
        assertThat(reading).isInstanceOf(SheetReading.Readable.class);
        MeasuredSheet sheet = new Measurer().measure(((SheetReading.Readable) reading).page(), drawing);
        SoftAssertions softly = new SoftAssertions();
        for (Expected value : drawing.values()) {
            if (!KNOWN_WEAK.contains(value.key())) {
                check(softly, value, sheet.measurement(value.key()).orElseThrow().finding());
            }
        }
        softly.assertAll();
    }

    private static void check(SoftAssertions softly, Expected value, Finding finding) {
        if (value instanceof Expected.Length length) {
            double within = value.key().equals("gutter.depth") ? WITHIN_FREE_END_MM : WITHIN_MM;
            checkQuantity(softly, value.key(), finding, length.exactMm(), within);
        } else if (value instanceof Expected.Angle angle) {
            checkQuantity(softly, value.key(), finding, angle.degrees(), WITHIN_DEGREES);
        } else if (value instanceof Expected.Count count) {
            softly.assertThat(finding).as(value.key()).isEqualTo(new Finding.Count(count.number()));
        } else if (value instanceof Expected.YesNo yesNo) {
            softly.assertThat(finding).as(value.key()).isEqualTo(new Finding.YesNo(yesNo.yes()));
        } else {
            softly.assertThat(finding).as(value.key()).isEqualTo(new Finding.Word(((Expected.Word) value).word()));
        }
    }

    private static void checkQuantity(SoftAssertions softly, String key, Finding finding, double exact, double within) {
        softly.assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        if (finding instanceof Finding.Quantity quantity) {
            softly.assertThat(quantity.value()).as(key).isCloseTo(exact, within(within));
        }
    }

    private static ScanPage.Picture rendered(ExpectedDrawing drawing, int dpi) throws IOException {
        try (PDDocument document = new PDDocument()) {
            SheetFormat format = drawing.task().sheet();
            PDPage page = new PDPage(new PDRectangle(
                    (float) (format.widthMm() * POINTS_PER_MM), (float) (format.heightMm() * POINTS_PER_MM)));
            document.addPage(page);
            try (PDPageContentStream pen = new PDPageContentStream(document, page)) {
                draw(drawing, format, pen);
            }
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, dpi, ImageType.GRAY);
            byte[] grey = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
            return new ScanPage.Picture(image.getWidth(), image.getHeight(), grey, dpi, dpi);
        }
    }

    private static void draw(ExpectedDrawing drawing, SheetFormat format, PDPageContentStream pen) throws IOException {
        Vector middle = ExactPage.shift(drawing.lines(), false, format.widthMm(), format.heightMm());
        pen.setStrokingColor(0.25f);
        pen.setLineCapStyle(1);
        for (DrawnLine line : drawing.lines()) {
            Segment segment = line.segment();
            stroke(
                    pen,
                    new Segment(segment.start().plus(middle), segment.end().plus(middle)),
                    ExactPage.isOutline(line) ? 0.35 : 0.2);
        }
        double barMm = format.referenceBarMm();
        for (Segment bar : List.of(
                Segment.between(25, 14, 25 + barMm, 14),
                Segment.between(25, 11, 25, 17),
                Segment.between(25 + barMm, 11, 25 + barMm, 17))) {
            stroke(pen, bar, 0.35);
        }
    }

    private static void stroke(PDPageContentStream pen, Segment segment, double breadthMm) throws IOException {
        pen.setLineWidth((float) (breadthMm * POINTS_PER_MM));
        pen.moveTo((float) (segment.start().x() * POINTS_PER_MM), (float) (segment.start().y() * POINTS_PER_MM));
        pen.lineTo((float) (segment.end().x() * POINTS_PER_MM), (float) (segment.end().y() * POINTS_PER_MM));
        pen.stroke();
    }
}
