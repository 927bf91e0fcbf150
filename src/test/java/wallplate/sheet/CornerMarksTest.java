package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.datamatrix.DataMatrixWriter;
import com.google.zxing.qrcode.QRCodeWriter;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.opencv.objdetect.Objdetect;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.ScanPage.Picture;
import wallplate.task.SheetFormat;

/**
 * Printed sheets with marks made by OpenCV's ArUco module and codes by ZXing, warped and read again: the two libraries
 * are the outside reference.
 */
class CornerMarksTest {

    private static final SheetFormat FORMAT = new SheetFormat("A4", 297, 210, 100);
    private static final SheetCode CODE = new SheetCode("boathouse-eaves", "L07", 3);
    private static final double PRINTED_PIXELS_PER_MM = 12;

    static {
        NativeLibraries.load();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 3, 91, 178.5, 270})
    void findsSheetByItsMarksHoweverItLies(double turn) throws WriterException {
        Warped warped = warped(turn, 0, BarcodeFormat.QR_CODE);

        LevelPage page = read(warped);

        assertThat(page.code()).contains(CODE);
        assertTrue(warped, page);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.04, 0.1})
    void rectifiesPerspectiveByTheMarks(double tilt) throws WriterException {
        Warped warped = warped(2, tilt, BarcodeFormat.QR_CODE);

        LevelPage page = read(warped);

        assertThat(page.photograph()).isTrue();
        assertThat(page.code()).contains(CODE);
        assertTrue(warped, page);
    }

    @Test
    void readsDataMatrixToo() throws WriterException {
        assertThat(read(warped(1, 0.03, BarcodeFormat.DATA_MATRIX)).code()).contains(CODE);
    }

    @Test
    void keepsMarksAndCodeOutOfTheInk() throws WriterException {
        Warped warped = warped(0, 0, BarcodeFormat.QR_CODE);

        LevelPage page = read(warped);

        PrintedMarks.of(FORMAT).marks().forEach(mark -> {
            Point centre = onPage(warped, page, mark.centre());
            assertThat(page.ink().at(centre.x(), centre.y())).isZero();
        });
        Point code = onPage(warped, page, PrintedMarks.of(FORMAT).code().centre());
        assertThat(page.ink().at(code.x(), code.y())).isZero();
    }

    @Test
    void codeTextComesBackAsItWent() {
        assertThat(SheetCode.parse(CODE.payload())).contains(CODE);
        assertThat(SheetCode.parse(new SheetCode("shed", "", 1).payload())).contains(new SheetCode("shed", "", 1));
        assertThat(SheetCode.parse("WP2/shed/L01/1")).isEqualTo(Optional.empty());
        assertThat(SheetCode.parse("a web address, perhaps")).isEqualTo(Optional.empty());
    }

    private record Warped(Picture picture, double[] sheetToPixels) {

        Point pixel(Point onSheet) {
            double[] m = sheetToPixels;
            double w = m[6] * onSheet.x() + m[7] * onSheet.y() + m[8];
            return new Point(
                    (m[0] * onSheet.x() + m[1] * onSheet.y() + m[2]) / w,
                    (m[3] * onSheet.x() + m[4] * onSheet.y() + m[5]) / w);
        }
    }

    private static LevelPage read(Warped warped) {
        SheetReading reading = new SheetReader().read(new ScanPage("marked.png", 1, warped.picture), FORMAT);
        assertThat(reading).as("%s", reading).isInstanceOf(SheetReading.Readable.class);
        return ((SheetReading.Readable) reading).page();
    }

    private static Point onPage(Warped warped, LevelPage page, Point onSheet) {
        return page.toScan().inverse().apply(warped.pixel(onSheet));
    }

    /** The drawing's lines must come out level, upright and true everywhere on the sheet. */
    private static void assertTrue(Warped warped, LevelPage page) {
        Point left = onPage(warped, page, new Point(40, 60));
        Point right = onPage(warped, page, new Point(240, 60));
        Point top = onPage(warped, page, new Point(40, 190));
        assertThat(right.minus(left).angleDegrees()).isCloseTo(0, within(0.03));
        assertThat(top.minus(left).angleDegrees()).isCloseTo(90, within(0.05));
        assertThat(right.distanceTo(left)).isCloseTo(200, within(0.16));
        assertThat(top.distanceTo(left)).isCloseTo(130, within(0.16));
    }

    /** The sheet on a light table that shows no edges, turned and tilted. */
    private static Warped warped(double turnDegrees, double tilt, BarcodeFormat codeFormat) throws WriterException {
        Mat sheet = sheet(codeFormat);
        Mat picture = new Mat();
        Mat map = null;
        MatOfPoint2f from = null;
        MatOfPoint2f to = null;
        try {
            double scale = 10;
            Point middle = new Point(FORMAT.widthMm() / 2, FORMAT.heightMm() / 2);
            int side = 3400;
            org.opencv.core.Point[] sheetCorners = new org.opencv.core.Point[4];
            org.opencv.core.Point[] seen = new org.opencv.core.Point[4];
            Point[] corners = {
                new Point(0, 0),
                new Point(FORMAT.widthMm(), 0),
                new Point(FORMAT.widthMm(), FORMAT.heightMm()),
                new Point(0, FORMAT.heightMm())
            };
            for (int i = 0; i < 4; i++) {
                sheetCorners[i] = new org.opencv.core.Point(corners[i].x(), corners[i].y());
                var turned = corners[i].minus(middle).rotatedDegrees(-turnDegrees);
                double far = 1 + tilt * turned.y() / 150;
                seen[i] = new org.opencv.core.Point(
                        side / 2.0 + turned.x() * scale / far, side / 2.0 - turned.y() * scale / far);
            }
            from = new MatOfPoint2f(sheetCorners);
            to = new MatOfPoint2f(seen);
            map = Imgproc.getPerspectiveTransform(from, to);
            double[] sheetToPixels = new double[9];
            map.get(0, 0, sheetToPixels);
            warp(sheet, picture, sheetToPixels, side);
            byte[] grey = new byte[side * side];
            picture.get(0, 0, grey);
            Random random = new Random(11);
            for (int i = 0; i < grey.length; i++) {
                grey[i] = (byte) Math.max(0, Math.min(255, (grey[i] & 0xff) + random.nextInt(7) - 3));
            }
            return new Warped(new Picture(side, side, grey, 0, 0), sheetToPixels);
        } finally {
            sheet.release();
            picture.release();
            for (Mat each : new Mat[] {map, from, to}) {
                if (each != null) {
                    each.release();
                }
            }
        }
    }

    /** Whole pixels of the sheet picture are at corners, so half a pixel stands between the two conventions. */
    private static void warp(Mat sheet, Mat picture, double[] sheetToPixels, int side) {
        double s = PRINTED_PIXELS_PER_MM;
        double[] printedToSheet = {
            1 / s, 0, 0.5 / s, 0, -1 / s, FORMAT.heightMm() - 0.5 / s, 0, 0, 1
        };
        double[] whole = wallplate.sheet.page.PageMap.product(
                new double[] {1, 0, -0.5, 0, 1, -0.5, 0, 0, 1},
                wallplate.sheet.page.PageMap.product(sheetToPixels, printedToSheet));
        Mat matrix = new Mat(3, 3, CvType.CV_64FC1);
        matrix.put(0, 0, whole);
        Imgproc.warpPerspective(
                sheet,
                picture,
                matrix,
                new Size(side, side),
                Imgproc.INTER_AREA,
                Core.BORDER_CONSTANT,
                new Scalar(238));
        Imgproc.GaussianBlur(picture, picture, new Size(0, 0), 0.6);
        matrix.release();
    }

    private static Mat sheet(BarcodeFormat codeFormat) throws WriterException {
        double s = PRINTED_PIXELS_PER_MM;
        Mat sheet = new Mat(
                (int) (FORMAT.heightMm() * s), (int) (FORMAT.widthMm() * s), CvType.CV_8UC1, new Scalar(238));
        PrintedMarks printed = PrintedMarks.of(FORMAT);
        for (PrintedMarks.CornerMark mark : printed.marks()) {
            Mat drawn = new Mat();
            int side = (int) (PrintedMarks.MARK_SIZE * s);
            Objdetect.generateImageMarker(
                    Objdetect.getPredefinedDictionary(Objdetect.DICT_4X4_50), mark.number(), side, drawn, 1);
            int left = (int) Math.round((mark.centre().x() - PrintedMarks.MARK_SIZE / 2) * s);
            int top = (int) Math.round((FORMAT.heightMm() - mark.centre().y() - PrintedMarks.MARK_SIZE / 2) * s);
            Mat place = sheet.submat(top, top + side, left, left + side);
            drawn.copyTo(place);
            place.release();
            drawn.release();
        }
        drawCode(sheet, printed.code(), codeFormat);
        for (Segment line : DrawnSheet.aSheet().on(FORMAT).lines()) {
            Imgproc.line(sheet, at(line.start()), at(line.end()), new Scalar(90), 5, Imgproc.LINE_AA);
        }
        return sheet;
    }

    private static org.opencv.core.Point at(Point onSheet) {
        return new org.opencv.core.Point(
                onSheet.x() * PRINTED_PIXELS_PER_MM - 0.5, (FORMAT.heightMm() - onSheet.y()) * PRINTED_PIXELS_PER_MM - 0.5);
    }

    private static void drawCode(Mat sheet, PrintedMarks.CodePlace place, BarcodeFormat format) throws WriterException {
        BitMatrix cells = format == BarcodeFormat.QR_CODE
                ? new QRCodeWriter()
                        .encode(
                                CODE.payload(),
                                format,
                                0,
                                0,
                                java.util.Map.of(com.google.zxing.EncodeHintType.MARGIN, 0))
                : new DataMatrixWriter().encode(CODE.payload(), format, 0, 0);
        double cell = place.size() / cells.getWidth() * PRINTED_PIXELS_PER_MM;
        double left = (place.centre().x() - place.size() / 2) * PRINTED_PIXELS_PER_MM;
        double top = (FORMAT.heightMm() - place.centre().y() - place.size() / 2) * PRINTED_PIXELS_PER_MM;
        for (int y = 0; y < cells.getHeight(); y++) {
            for (int x = 0; x < cells.getWidth(); x++) {
                if (cells.get(x, y)) {
                    Imgproc.rectangle(
                            sheet,
                            new org.opencv.core.Point(Math.round(left + x * cell), Math.round(top + y * cell)),
                            new org.opencv.core.Point(
                                    Math.round(left + (x + 1) * cell) - 1, Math.round(top + (y + 1) * cell) - 1),
                            new Scalar(20),
                            Imgproc.FILLED);
                }
            }
        }
    }
}
