package wallplate.benchmark;

import java.util.concurrent.TimeUnit;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import wallplate.measure.ExactPage;
import wallplate.measure.MeasureTasks;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurer;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.sheet.NativeLibraries;
import wallplate.solver.ExpectedDrawing;

/**
 * From a level A4 page to its measurements against OpenCV's {@code LineSegmentDetector} on the same page, enlarged to
 * what a scan at 300 dpi has, both on one thread. Run by its main method, with the test class path.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 3, time = 3)
@Fork(1)
public class MeasuringBenchmark {

    private final ExpectedDrawing drawing = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private final LevelPage page = ExactPage.of(drawing);
    private Mat scan;

    @Setup
    public void enlarge() {
        NativeLibraries.load();
        Core.setNumThreads(1);
        InkImage ink = page.ink();
        double factor = 300 / 25.4 / ink.pixelsPerMm();
        Mat level = new Mat(ink.heightPx(), ink.widthPx(), CvType.CV_8UC1);
        scan = new Mat();
        try {
            level.put(0, 0, ink.bytes());
            Core.bitwise_not(level, level);
            Imgproc.resize(level, scan, new Size(), factor, factor, Imgproc.INTER_LINEAR);
        } finally {
            level.release();
        }
    }

    @TearDown
    public void release() {
        scan.release();
    }

    @Benchmark
    public MeasuredSheet measure() {
        return new Measurer().measure(page, drawing);
    }

    /** The yardstick. */
    @Benchmark
    public int lineSegmentDetectorAlone() {
        Mat lines = new Mat();
        try {
            LineSegmentDetector detector = Imgproc.createLineSegmentDetector();
            detector.detect(scan, lines);
            return lines.rows();
        } finally {
            lines.release();
        }
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder().include(MeasuringBenchmark.class.getSimpleName()).build()).run();
    }
}
