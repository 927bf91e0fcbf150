package wallplate.drafting.opencv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.ReaderException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.objdetect.ArucoDetector;
import org.opencv.objdetect.Objdetect;
import wallplate.drafting.DraftingTasks;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.SheetOwner;
import wallplate.drafting.pdf.RenderedPages;
import wallplate.geometry.Point;
import wallplate.sheet.NativeLibraries;
import wallplate.sheet.PrintedMarks;
import wallplate.sheet.PrintedMarks.CornerMark;
import wallplate.sheet.SheetCode;
import wallplate.task.DrawingTask;
import wallplate.task.Tasks;

/**
 * Printed sheets read back by programs that had no part in printing them: PDFBox renders the page, ZXing reads the code,
 * OpenCV finds the corner marks.
 */
class PrintedSheetTest {

    private static final SheetOwner OWNER = new SheetOwner("L07", "Thandeka Mabaso-Ward", "11 B", "25 November", 3);

    @BeforeAll
    static void loadNativeLibraries() {
        NativeLibraries.load();
    }

    private static BufferedImage printed(DrawingTask task, int dpi) {
        byte[] pdf = DrawingSheets.of(task)
                .withBrief(true)
                .withNotes(List.of("Leave your construction lines faint."))
                .pdf(List.of(SheetOwner.anybody(1), OWNER));
        return RenderedPages.grey(pdf, 1, dpi);
    }

    @ParameterizedTest
    @ValueSource(ints = {150, 200, 300})
    void codeIsReadBackByZxing(int dpi) throws ReaderException {
        for (String yaml : DraftingTasks.ALL) {
            DrawingTask task = Tasks.accepted(yaml);
            String payload = decoded(printed(task, dpi));
            assertThat(SheetCode.parse(payload)).contains(new SheetCode(task.id(), "L07", 3));
        }
    }

    private static String decoded(BufferedImage page) throws ReaderException {
        BinaryBitmap bitmap = new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(page)));
        return new QRCodeReader().decode(bitmap, Map.of(DecodeHintType.TRY_HARDER, true)).getText();
    }

    @Test
    void codeSurvivesAPencilStrokeAcrossIt() throws ReaderException {
        DrawingTask task = Tasks.boathouse();
        BufferedImage page = printed(task, 300);
        Point centre = PrintedMarks.of(task.sheet()).code().centre();
        int x = (int) (centre.x() / 25.4 * 300);
        int y = (int) ((task.sheet().heightMm() - centre.y()) / 25.4 * 300);
        var pencil = page.createGraphics();
        pencil.setColor(Color.BLACK);
        pencil.fillRect(x - 40, y + 10, 100, 7);
        pencil.dispose();
        assertThat(decoded(page)).isEqualTo("WP1/boathouse-eaves/L07/3");
    }

    @Test
    void sheetForAnybodyCarriesNoLearner() throws ReaderException {
        byte[] pdf = DrawingSheets.of(Tasks.boathouse()).pdf(List.of(SheetOwner.anybody(2)));
        assertThat(decoded(RenderedPages.grey(pdf, 0, 200))).isEqualTo("WP1/boathouse-eaves//2");
    }

    @ParameterizedTest
    @CsvSource({"150, 0.17", "300, 0.085"}) // within one pixel
    void openCvFindsTheFourMarksInTheirPlaces(int dpi, double toleranceMm) {
        for (String yaml : DraftingTasks.ALL) {
            DrawingTask task = Tasks.accepted(yaml);
            Map<Integer, List<Point>> found = marks(printed(task, dpi), dpi, task.sheet().heightMm());
            assertThat(found).containsOnlyKeys(0, 1, 2, 3);
            for (CornerMark mark : PrintedMarks.of(task.sheet()).marks()) {
                for (int corner = 0; corner < 4; corner++) {
                    Point expected = mark.corners().get(corner);
                    Point seen = found.get(mark.number()).get(corner);
                    assertThat(seen.x()).isCloseTo(expected.x(), within(toleranceMm));
                    assertThat(seen.y()).isCloseTo(expected.y(), within(toleranceMm));
                }
            }
        }
    }

    /** Marks by number, each with its corners in the dictionary's order, in millimetres from the lower left. */
    private static Map<Integer, List<Point>> marks(BufferedImage page, int dpi, double heightMm) {
        Mat picture = new Mat(page.getHeight(), page.getWidth(), CvType.CV_8UC1);
        Mat numbers = new Mat();
        List<Mat> corners = new ArrayList<>();
        try {
            picture.put(0, 0, ((DataBufferByte) page.getRaster().getDataBuffer()).getData());
            var detector = new ArucoDetector(Objdetect.getPredefinedDictionary(Objdetect.DICT_4X4_50));
            var parameters = detector.getDetectorParameters();
            parameters.set_cornerRefinementMethod(Objdetect.CORNER_REFINE_SUBPIX);
            detector.setDetectorParameters(parameters);
            detector.detectMarkers(picture, corners, numbers);
            Map<Integer, List<Point>> found = new TreeMap<>();
            for (int mark = 0; mark < corners.size(); mark++) {
                List<Point> places = new ArrayList<>();
                for (int corner = 0; corner < 4; corner++) {
                    double[] pixel = corners.get(mark).get(0, corner);
                    // OpenCV counts from the middle of the first pixel.
                    places.add(new Point(
                            (pixel[0] + 0.5) * 25.4 / dpi, heightMm - (pixel[1] + 0.5) * 25.4 / dpi));
                }
                found.put((int) numbers.get(mark, 0)[0], places);
            }
            return found;
        } finally {
            corners.forEach(Mat::release);
            numbers.release();
            picture.release();
        }
    }

    @Test
    void nothingIsPrintedInTheWhiteAroundMarksAndCode() {
        for (String yaml : DraftingTasks.ALL) {
            DrawingTask task = Tasks.accepted(yaml);
            BufferedImage page = printed(task, 200);
            PrintedMarks marks = PrintedMarks.of(task.sheet());
            for (CornerMark mark : marks.marks()) {
                assertThat(darkAround(page, task, mark.centre(), PrintedMarks.MARK_SIZE, PrintedMarks.MARK_QUIET_ZONE))
                        .isZero();
            }
            assertThat(darkAround(page, task, marks.code().centre(), marks.code().size(), PrintedMarks.CODE_QUIET_ZONE))
                    .isZero();
        }
    }

    /** How many pixels are not white in the frame of the given width around a square. */
    private static int darkAround(BufferedImage page, DrawingTask task, Point centre, double size, double quietMm) {
        double half = size / 2;
        double edge = 0.15;
        int dark = 0;
        for (double x = -half - quietMm + edge; x < half + quietMm - edge; x += 0.1) {
            for (double y = -half - quietMm + edge; y < half + quietMm - edge; y += 0.1) {
                boolean inside = Math.abs(x) < half + edge && Math.abs(y) < half + edge;
                if (!inside && grey(page, task, centre.x() + x, centre.y() + y) < 250) {
                    dark++;
                }
            }
        }
        return dark;
    }

    private static int grey(BufferedImage page, DrawingTask task, double xMm, double yMm) {
        int x = (int) (xMm / task.sheet().widthMm() * page.getWidth());
        int y = (int) ((1 - yMm / task.sheet().heightMm()) * page.getHeight());
        return page.getRaster().getSample(x, y, 0);
    }

    @Test
    void placeOfTheBarIsLeftWhite() {
        for (String yaml : DraftingTasks.ALL) {
            DrawingTask task = Tasks.accepted(yaml);
            BufferedImage page = printed(task, 200);
            var bar = PrintedMarks.of(task.sheet()).barPlace();
            for (double x = bar.start().x() - 5; x <= bar.end().x() + 5; x += 0.2) {
                for (double y = bar.start().y() - 4.5; y <= bar.start().y() + 8; y += 0.2) {
                    assertThat(grey(page, task, x, y)).as("grey at %.1f, %.1f mm", x, y).isGreaterThan(250);
                }
            }
        }
    }

    @Test
    void blankPageHasNoCode() {
        BufferedImage blank = new BufferedImage(800, 600, BufferedImage.TYPE_BYTE_GRAY);
        assertThatThrownBy(() -> decoded(blank)).isInstanceOf(NotFoundException.class);
    }

    @Test
    void emptyClassListIsRefused() {
        DrawingSheets sheets = DrawingSheets.of(Tasks.boathouse());
        assertThatThrownBy(() -> sheets.pdf(List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("name at least one learner");
    }

    @Test
    void idThatACodeCannotHoldIsRefused() {
        DrawingSheets sheets = DrawingSheets.of(Tasks.boathouse());
        List<SheetOwner> owners = List.of(new SheetOwner("no/slash", "", "", "", 1));
        assertThatThrownBy(() -> sheets.pdf(owners)).isInstanceOf(IllegalArgumentException.class);
    }
}
