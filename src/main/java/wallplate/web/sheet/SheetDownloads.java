package wallplate.web.sheet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import wallplate.handouts.SheetDocuments;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.MarkSheetFile;
import wallplate.web.page.FileName;
import wallplate.web.page.NotFound;

/** Pictures and files of single sheets and of whole sets. */
@Controller
class SheetDownloads {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

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

    @GetMapping("/class-sets/{id}/mark-sheet.csv")
    ResponseEntity<String> markSheet(@PathVariable long id) {
        ClassSet classSet = classSet(id);
        MarkSheetFile file = new MarkSheetFile();
        for (SheetEntry sheet : sheets.of(id)) {
            file.add(sheet.label(), documents.withoutPicture(classSet, sheet));
        }
        return ResponseEntity.ok()
                .headers(named("mark-sheet-" + FileName.of(classSet.title()) + ".csv"))
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
        return "%02d-%s".formatted(sheet.number(), FileName.of(sheet.label()));
    }

    private static HttpHeaders named(String fileName) {
        HttpHeaders headers = new HttpHeaders();
        headers.setContentDisposition(ContentDisposition.attachment()
                .filename(fileName, StandardCharsets.UTF_8)
                .build());
        return headers;
    }
}
