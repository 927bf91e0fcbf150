package wallplate.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.marking.Guideline;
import wallplate.report.FeedbackReport;
import wallplate.report.MarkSheetFile;
import wallplate.report.ResultFile;
import wallplate.sheet.ScanFile;
import wallplate.sheet.ScanPage;
import wallplate.solver.ExpectedDrawing;

/**
 * One run of the command: every page of every scan is assessed and its results are written before the next is opened.
 */
final class MarkRun {

    private static final String FAILED =
            "The program failed on this file, which is no fault of the drawing: save the scan again as a PNG or PDF"
                    + " file and hand that in.";

    private final ExpectedDrawing expected;
    private final Guideline guideline;
    private final Assessor assessor;
    private final FeedbackReport feedback;
    private final RunWords words;
    private final Path out;
    private final PrintWriter progress;
    private final ResultNames names = new ResultNames();
    private final MarkSheetFile markSheet = new MarkSheetFile();
    private boolean everySheetRead = true;
    private boolean warnedOfEarlierRun;

    MarkRun(ExpectedDrawing expected, Guideline guideline, Locale language, Path out, PrintWriter progress) {
        this.expected = expected;
        this.guideline = guideline;
        this.assessor = new Assessor(language);
        this.feedback = new FeedbackReport(language);
        this.words = new RunWords(language);
        this.out = out;
        this.progress = progress;
    }

    /** Marks the scans and says whether every sheet was read. */
    boolean mark(List<Path> scans) throws IOException {
        for (Path scan : scans) {
            markFile(scan);
        }
        write("mark-sheet.csv", markSheet.write().getBytes(StandardCharsets.UTF_8));
        return everySheetRead;
    }

    private void markFile(Path file) {
        PageOrder pages = new PageOrder(this::report);
        String name = file.getFileName().toString();
        try {
            ScanFile.forEachPage(file, page -> pages.add(assess(page)));
        } catch (UncheckedIOException unwritable) {
            throw unwritable;
        } catch (IOException | RuntimeException broken) {
            pages.add(failed(name, pages.nextPage(), broken));
        }
        pages.end();
    }

    /**
     * A fault of the program in one sheet must not cost the others their marks: it makes that sheet unreadable,
     * loudly.
     */
    private AssessedSheet assess(ScanPage page) {
        try {
            return assessor.assess(page, expected, guideline);
        } catch (RuntimeException fault) {
            return failed(page.scan(), page.page(), fault);
        }
    }

    private AssessedSheet failed(String scan, int page, Exception fault) {
        progress.println(words.fault(scan, page, fault));
        return new AssessedSheet.Unreadable(scan, page, expected, FAILED);
    }

    private void report(AssessedSheet sheet, boolean severalPages) {
        ResultNames.ResultName name = names.forPage(sheet.scan(), sheet.page(), severalPages);
        if (name.isShared()) {
            progress.println(words.sharedName(sheet, name.name()));
        }
        write(name.name() + ".json", ResultFile.write(sheet).getBytes(StandardCharsets.UTF_8));
        write(name.name() + ".pdf", feedback(sheet));
        markSheet.add(name.name(), sheet);
        progress.println(words.outcome(sheet));
        progress.flush();
        everySheetRead &= sheet instanceof AssessedSheet.Read;
    }

    private byte[] feedback(AssessedSheet sheet) {
        ByteArrayOutputStream pages = new ByteArrayOutputStream();
        try {
            feedback.write(sheet, pages);
        } catch (IOException impossible) {
            throw new UncheckedIOException("cannot lay out the feedback report", impossible);
        }
        return pages.toByteArray();
    }

    private void write(String file, byte[] content) {
        Path target = out.resolve(file);
        try {
            if (Files.exists(target) && !warnedOfEarlierRun) {
                warnedOfEarlierRun = true;
                progress.println(words.earlierRun(out.toString()));
            }
            Files.write(target, content);
        } catch (IOException unwritable) {
            throw new UncheckedIOException("cannot write " + target, unwritable);
        }
    }
}
