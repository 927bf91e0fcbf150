package wallplate.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Fault;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** {@code mark}: assesses scans against a task and writes a result file and a feedback report for each sheet. */
@Command(
        name = "mark",
        mixinStandardHelpOptions = true,
        description =
                "Measures and marks every page of the scans, and writes for each sheet a result file (JSON) and a "
                        + "feedback report (PDF), and for the set the mark sheet (CSV).",
        footer = {
            "",
            "Exit status: 0 every sheet was read; 3 at least one could not be read, the others are all there; "
                    + "2 bad arguments or a bad task file.",
            "A drawing exercise, not a design: local building regulations and a licensed professional decide."
        })
final class MarkCommand implements Callable<Integer> {

    static final int ALL_READ = 0;
    static final int BAD_ARGUMENTS = 2;
    static final int SOME_UNREADABLE = 3;

    private final PrintWriter errors;

    @Option(names = "--task", required = true, paramLabel = "TASK", description = "the task file (YAML)")
    private Path task = Path.of("");

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "the folder for the results; made where it is missing")
    private Path out = Path.of("");

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            defaultValue = "en",
            description = "the language of the feedback and of what is said of each sheet, such as en or de; English by default")
    private String language = "en";

    @Parameters(arity = "1..*", paramLabel = "SCAN", description = "PNG, JPEG, TIFF or PDF files, or folders of them")
    private List<Path> scans = List.of();

    MarkCommand(PrintWriter errors) {
        this.errors = errors;
    }

    @Override
    public Integer call() throws IOException {
        ScanArguments arguments = ScanArguments.of(scans);
        arguments.faults().forEach(errors::println);
        Optional<ExpectedDrawing> expected = readTask();
        Optional<Guideline> guideline = expected.flatMap(this::readGuideline);
        boolean outUsable = prepareOut();
        if (guideline.isEmpty() || !arguments.faults().isEmpty() || !outUsable) {
            return BAD_ARGUMENTS;
        }
        Locale spoken = Locale.forLanguageTag(language);
        RunWords words = new RunWords(spoken);
        arguments.passedOver().forEach(file -> errors.println(words.passedOver(file.toString())));
        MarkRun run = new MarkRun(expected.get(), guideline.get(), spoken, out, errors);
        return run.mark(arguments.files()) ? ALL_READ : SOME_UNREADABLE;
    }

    private Optional<ExpectedDrawing> readTask() {
        String yaml;
        try {
            yaml = Files.readString(task);
        } catch (CharacterCodingException notText) {
            errors.printf("--task: %s is not a UTF-8 text file; accepted: a task file in YAML%n", task);
            return Optional.empty();
        } catch (IOException unreadable) {
            errors.printf("--task: %s cannot be read; accepted: the path of a task file in YAML%n", task);
            return Optional.empty();
        }
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return Optional.of(Solver.solve(accepted.task()));
        }
        print(((TaskReading.Refused) reading).faults());
        return Optional.empty();
    }

    private Optional<Guideline> readGuideline(ExpectedDrawing expected) {
        GuidelineReading reading = Guideline.read(expected);
        if (reading instanceof GuidelineReading.Accepted accepted) {
            return Optional.of(accepted.guideline());
        }
        print(((GuidelineReading.Refused) reading).faults());
        return Optional.empty();
    }

    private void print(List<Fault> faults) {
        faults.forEach(fault -> errors.printf("%s: %s%n", task.getFileName(), fault.message()));
    }

    private boolean prepareOut() {
        try {
            Files.createDirectories(out);
            return true;
        } catch (IOException notAFolder) {
            errors.printf("--out: %s cannot be made or is no folder; accepted: a folder that can be written to%n", out);
            return false;
        }
    }
}
