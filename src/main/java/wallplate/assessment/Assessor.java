package wallplate.assessment;

import java.time.Duration;
import java.util.Locale;
import java.util.function.Supplier;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurer;
import wallplate.sheet.LevelPage;
import wallplate.sheet.ScanPage;
import wallplate.sheet.SheetReader;
import wallplate.sheet.SheetReading;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;

/**
 * Reads, measures and marks one scanned page after another.
 *
 * <p>It keeps nothing between pages, so that several threads may use one.
 */
public final class Assessor {

    private final SheetReader reader = new SheetReader();
    private final Measurer measurer = new Measurer();
    private final Marker marker;
    private final StageTimes times;

    /** An assessor whose feedback is in English. */
    public Assessor() {
        this(Locale.ENGLISH);
    }

    /** An assessor whose feedback is in a language; English stands in where there is no such one. */
    public Assessor(Locale language) {
        this(language, StageTimes.UNTOLD);
    }

    /** An assessor that tells how long its stages took. */
    public Assessor(Locale language, StageTimes times) {
        this.marker = new Marker(language);
        this.times = times;
    }

    /**
     * Assesses a page under the guideline that the task carries, or the default one.
     *
     * @throws IllegalArgumentException where the task's guideline has faults: check it first with
     *     {@link Guideline#read}
     */
    public AssessedSheet assess(ScanPage page, DrawingTask task) {
        ExpectedDrawing expected = Solver.solve(task);
        return assess(page, expected, guidelineOf(expected));
    }

    /** Assesses a page under a guideline. */
    public AssessedSheet assess(ScanPage page, ExpectedDrawing expected, Guideline guideline) {
        SheetReading reading = timed(StageTimes.Stage.LEVEL, () -> reader.read(page, expected.task().sheet()));
        if (reading instanceof SheetReading.Readable readable) {
            return measure(page, expected, guideline, readable.page());
        }
        SheetReading.Unreadable refused = (SheetReading.Unreadable) reading;
        return new AssessedSheet.Unreadable(
                page.scan(), page.page(), expected, refused.reason(), refused.code(), refused.unscaled());
    }

    /**
     * Measures and marks a sheet again, with what a person corrected about its reading.
     *
     * @param asRead the sheet as the program read it, with its ink
     */
    public CorrectedSheet correct(AssessedSheet.Read asRead, Corrections corrections) {
        Correcting.Outcome outcome = new Correcting(measurer, asRead).with(corrections);
        if (outcome instanceof Correcting.Outcome.Again again) {
            ExpectedDrawing expected = asRead.expected();
            MarkedSheet marked = marker.mark(guidelineOf(expected), expected, again.measured());
            return new CorrectedSheet.Corrected(new AssessedSheet.Read(
                    asRead.scan(),
                    asRead.page(),
                    expected,
                    OtherTask.noted(again.page(), expected, again.measured(), marked),
                    again.measured(),
                    marked));
        }
        return new CorrectedSheet.Refused(((Correcting.Outcome.Not) outcome).reason());
    }

    private AssessedSheet measure(ScanPage page, ExpectedDrawing expected, Guideline guideline, LevelPage level) {
        MeasuredSheet measured = timed(StageTimes.Stage.MEASURE, () -> measurer.measure(level, expected));
        MarkedSheet marked = timed(StageTimes.Stage.MARK, () -> marker.mark(guideline, expected, measured));
        LevelPage noted = OtherTask.noted(level, expected, measured, marked);
        return new AssessedSheet.Read(page.scan(), page.page(), expected, noted, measured, marked);
    }

    private <T> T timed(StageTimes.Stage stage, Supplier<T> work) {
        long began = System.nanoTime();
        T result = work.get();
        times.took(stage, Duration.ofNanos(System.nanoTime() - began));
        return result;
    }

    private static Guideline guidelineOf(ExpectedDrawing expected) {
        GuidelineReading reading = Guideline.read(expected);
        if (reading instanceof GuidelineReading.Accepted accepted) {
            return accepted.guideline();
        }
        throw new IllegalArgumentException(
                "the task's marking guideline has faults: " + ((GuidelineReading.Refused) reading).faults());
    }
}
