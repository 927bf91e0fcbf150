package wallplate.web.sheet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.ClassReports;
import wallplate.report.MarkSheetFile;
import wallplate.web.page.NotFound;

/** Pictures and files of single sheets and of whole sets. */
@Controller
class SheetDownloads {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private static final MediaType ZIP = new MediaType("application", "zip");

    private final Sheets sheets;
    private final ClassSets classSets;
    private final SheetDocuments documents;

    SheetDownloads(Sheets sheets, ClassSets classSets, SheetDocuments documents) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.documents = documents;
    }

    @GetMapping("/sheets/{id}/result.json")
    ResponseEntity<String> result(@PathVariable long id) {
        SheetEntry sheet = found(id);
        String json = documents
                .result(classSet(sheet.classSetId()), sheet)
                .orElseThrow(() -> new NotFound("This sheet has not been read yet."));
        return ResponseEntity.ok()
                .headers(named(fileName(sheet) + ".json"))
                .contentType(MediaType.APPLICATION_JSON)
                .body(json);
    }

    @GetMapping("/sheets/{id}/feedback.pdf")
    ResponseEntity<byte[]> feedback(@PathVariable long id, Locale language) throws IOException {
        SheetEntry sheet = found(id);
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .body(documents.feedback(classSet(sheet.classSetId()), sheet, language));
    }

    /** The feedback of every sheet that has been looked at, a PDF each, written as they are made. */
    @GetMapping("/class-sets/{id}/feedback.zip")
    ResponseEntity<StreamingResponseBody> feedbackOfSet(@PathVariable long id, Locale language) {
        ClassSet classSet = classSet(id);
        List<SheetEntry> finished =
                sheets.of(id).stream().filter(sheet -> sheet.state().isFinished()).toList();
        return ResponseEntity.ok()
                .headers(named("feedback-" + plain(classSet.title()) + ".zip"))
                .contentType(ZIP)
                .body(out -> {
                    try (ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
                        for (SheetEntry sheet : finished) {
                            zip.putNextEntry(new ZipEntry(fileName(sheet) + ".pdf"));
                            zip.write(documents.feedback(classSet, sheet, language));
                            zip.closeEntry();
                        }
                    }
                });
    }

    /** The same as one PDF with a bookmark for each learner, written when all pages are made. */
    @GetMapping("/class-sets/{id}/feedback.pdf")
    ResponseEntity<StreamingResponseBody> feedbackOfSetAsOne(@PathVariable long id, Locale language) {
        ClassSet classSet = classSet(id);
        List<SheetEntry> finished =
                sheets.of(id).stream().filter(sheet -> sheet.state().isFinished()).toList();
        ClassReports.Sheets pages = visitor -> {
            for (SheetEntry sheet : finished) {
                visitor.visit(new ClassReports.NamedSheet(
                        sheet.label(), documents.withPicture(classSet, sheet, language)));
            }
        };
        return ResponseEntity.ok()
                .headers(named("feedback-" + plain(classSet.title()) + ".pdf"))
                .contentType(MediaType.APPLICATION_PDF)
                .body(out -> new ClassReports(language).writePdf(pages, out));
    }

    @GetMapping("/class-sets/{id}/mark-sheet.csv")
    ResponseEntity<String> markSheet(@PathVariable long id) {
        ClassSet classSet = classSet(id);
        MarkSheetFile file = new MarkSheetFile();
        for (SheetEntry sheet : sheets.of(id)) {
            file.add(sheet.label(), documents.withoutPicture(classSet, sheet));
        }
        return ResponseEntity.ok()
                .headers(named("mark-sheet-" + plain(classSet.title()) + ".csv"))
                .contentType(CSV)
                .body(file.write());
    }

    private ClassSet classSet(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }

    private SheetEntry found(long id) {
        return sheets.find(id).orElseThrow(() -> new NotFound("There is no sheet " + id + "."));
    }

    private static String fileName(SheetEntry sheet) {
        return "%02d-%s".formatted(sheet.number(), plain(sheet.label()));
    }

    /** Letters and figures of a title, parted by hyphens, as a file name. */
    private static String plain(String title) {
        String name = title.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-|-$", "");
        return name.isEmpty() ? "sheet" : name;
    }

    private static HttpHeaders named(String fileName) {
        HttpHeaders headers = new HttpHeaders();
        headers.setContentDisposition(ContentDisposition.attachment()
                .filename(fileName, StandardCharsets.UTF_8)
                .build());
        return headers;
    }
}
