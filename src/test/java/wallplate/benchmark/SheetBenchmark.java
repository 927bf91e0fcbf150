package wallplate.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.imgproc.Imgproc;
import org.opencv.imgproc.LineSegmentDetector;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import wallplate.sheet.BenchmarkSheets;
import wallplate.sheet.NativeLibraries;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.SheetReader;
import wallplate.sheet.SheetReading;
import wallplate.task.SheetFormat;

/**
 * Promised: from the bytes of an A4 page scanned at 300 dpi to a level page in less time than OpenCV's
 * {@code LineSegmentDetector} alone takes on the same page in the same run.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class SheetBenchmark {

    private final SheetFormat format = new SheetFormat("A4", 297, 210, 100);
    private Picture picture;
    private byte[] jpeg;

    @Setup
    public void draw() throws IOException {
        NativeLibraries.load();
        picture = BenchmarkSheets.a4At300Dpi();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(BenchmarkSheets.image(picture), "jpg", bytes);
        jpeg = bytes.toByteArray();
    }

    @Benchmark
    public List<ScanPage> decode() {
        List<ScanPage> pages = new ArrayList<>();
        ScanFile.forEachPage("sheet.jpg", jpeg, pages::add);
        return pages;
    }

    @Benchmark
    public SheetReading read() {
        return new SheetReader().read(new ScanPage("sheet.jpg", 1, picture), format);
    }

    @Benchmark
    public List<SheetReading> wholeStage() {
        List<SheetReading> readings = new ArrayList<>();
        ScanFile.forEachPage("sheet.jpg", jpeg, page -> readings.add(new SheetReader().read(page, format)));
        return readings;
    }

    /** The yardstick. */
    @Benchmark
    public int lineSegmentDetectorAlone() {
        Mat grey = new Mat(picture.heightPx(), picture.widthPx(), CvType.CV_8UC1);
        Mat lines = new Mat();
        try {
            grey.put(0, 0, picture.grey());
            LineSegmentDetector detector = Imgproc.createLineSegmentDetector();
            detector.detect(grey, lines);
            return lines.rows();
        } finally {
            grey.release();
            lines.release();
        }
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder().include(SheetBenchmark.class.getSimpleName()).build()).run();
    }
}
