package wallplate.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import wallplate.assessment.AssessedSheet;
import wallplate.report.pdf.FeedbackDocument;

/**
 * The feedback reports of a class together: as one PDF with a page range for each learner, or as a ZIP of single ones.
 */
public final class ClassReports {

    /** ZIP entries carry a time; a fixed one, the earliest that the format has, gives the same bytes each time. */
    private static final FileTime EARLIEST = FileTime.fromMillis(315_532_800_000L);

    private final Locale language;

    public ClassReports(Locale language) {
        this.language = language;
    }

    /**
     * A sheet with the name that it goes by.
     *
     * @param name a learner's or a file's, as it stands in a table of contents and, made safe, in a file name
     */
    public record NamedSheet(String name, AssessedSheet sheet) {}

    /** The pages of one learner in the PDF of the class, both counted from 1 and both his or hers. */
    public record PageRange(String name, int first, int last) {}

    /** Sheets one after another, so that only one is in memory. */
    @FunctionalInterface
    public interface Sheets {
        void forEach(SheetVisitor visitor) throws IOException;
    }

    /** What is done with each sheet. */
    @FunctionalInterface
    public interface SheetVisitor {
        void visit(NamedSheet sheet) throws IOException;
    }

    /** Writes one PDF of all reports, with a bookmark for each, and says where each learner's pages are. */
    public List<PageRange> writePdf(Sheets sheets, OutputStream out) throws IOException {
        List<PageRange> ranges = new ArrayList<>();
        try (FeedbackDocument document = new FeedbackDocument(language)) {
            sheets.forEach(sheet -> {
                int first = document.pages() + 1;
                document.add(sheet.name(), sheet.sheet());
                document.bookmark(sheet.name(), first);
                ranges.add(new PageRange(sheet.name(), first, document.pages()));
            });
            document.write(out);
        }
        return ranges;
    }

    /** Writes a ZIP with a PDF for each learner; no two have one name, whatever the learners are called. */
    public void writeZip(Sheets sheets, OutputStream out) throws IOException {
        Set<String> taken = new HashSet<>();
        FeedbackReport report = new FeedbackReport(language);
        ZipOutputStream zip = new ZipOutputStream(out);
        sheets.forEach(sheet -> {
            ByteArrayOutputStream pages = new ByteArrayOutputStream();
            report.write(sheet.name(), sheet.sheet(), pages);
            ZipEntry entry = new ZipEntry(fileName(sheet.name(), taken));
            entry.setLastModifiedTime(EARLIEST);
            zip.putNextEntry(entry);
            zip.write(pages.toByteArray());
            zip.closeEntry();
        });
        zip.finish();
    }

    private static String fileName(String name, Set<String> taken) {
        String safe = name.strip().replaceAll("[^\\p{L}\\p{N} ._-]", "_").replaceAll("^\\.+", "_");
        String wished = safe.isEmpty() ? "sheet" : safe;
        String free = wished;
        for (int number = 2; !taken.add(free.toLowerCase(Locale.ROOT)); number++) {
            free = wished + "-" + number;
        }
        return free + ".pdf";
    }
}
