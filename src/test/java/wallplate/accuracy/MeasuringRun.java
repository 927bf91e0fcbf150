package wallplate.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.measure.Measurer;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;
import wallplate.sheet.SheetReader;
import wallplate.sheet.SheetReading;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Reads and measures captured sheets as the program does, without marking or reporting. */
final class MeasuringRun {

    private final SheetReader reader = new SheetReader();
    private final Measurer measurer = new Measurer();

    static ExpectedDrawing expected(String taskYaml) {
        TaskReading reading = TaskFile.read(taskYaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return Solver.solve(accepted.task());
        }
        throw new IllegalArgumentException("the task was refused: " + ((TaskReading.Refused) reading).faults());
    }

    /** The sheet on the first page of a file. */
    SheetResult measure(TruthSheet truth, String fileName, byte[] content, ExpectedDrawing expected) {
        List<SheetResult> results = new ArrayList<>();
        ScanFile.forEachPage(fileName, content, page -> results.add(measure(truth, page, expected)));
        return results.get(0);
    }

    private SheetResult measure(TruthSheet truth, ScanPage page, ExpectedDrawing expected) {
        SheetReading reading = reader.read(page, expected.task().sheet());
        if (reading instanceof SheetReading.Readable readable) {
            return new SheetResult(
                    truth, Optional.of(readable.page()), Optional.of(measurer.measure(readable.page(), expected)));
        }
        return new SheetResult(truth, Optional.empty(), Optional.empty());
    }
}
