package wallplate.web.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.report.MarkSheetFile;
import wallplate.web.page.NotFound;

/** Pictures and files of single sheets and of whole sets. */
@Controller
class SheetDownloads {

    private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

    private final Sheets sheets;
    private final ClassSets classSets;
    private final ScanStore store;
    private final SheetDocuments documents;

    SheetDownloads(Sheets sheets, ClassSets classSets, ScanStore store, SheetDocuments documents) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.store = store;
        this.documents = documents;
    }

    /** A page picture by its name, which stands for its content and so never changes. */
    @GetMapping("/pictures/{name:[0-9a-f]{64}}.png")
    ResponseEntity<InputStreamResource> picture(@PathVariable String name) {
        InputStream content;
        try {
            content = store.open(name);
        } catch (IOException gone) {
            throw new NotFound("This picture is no longer kept.");
        }
        return ResponseEntity.ok()
                .cacheControl(CacheControl.maxAge(Duration.ofDays(365)).cachePrivate().immutable())
                .contentType(MediaType.IMAGE_PNG)
                .body(new InputStreamResource(content));
    }

    @GetMapping("/sheets/{id}/result.json")
    ResponseEntity<String> result(@PathVariable long id) {
        SheetEntry sheet = found(id);
        String json = sheets.resultJson(id).orElseThrow(() -> new NotFound("This sheet has not been read yet."));
        return ResponseEntity.ok()
                .headers(named(fileName(sheet) + ".json"))
                .contentType(MediaType.APPLICATION_JSON)
                .body(json);
    }

    @GetMapping("/class-sets/{id}/mark-sheet.csv")
    ResponseEntity<String> markSheet(@PathVariable long id) {
        ClassSet classSet = classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
        MarkSheetFile file = new MarkSheetFile();
        for (SheetEntry sheet : sheets.of(id)) {
            file.add(sheet.label(), documents.withoutPicture(classSet, sheet));
        }
        return ResponseEntity.ok()
                .headers(named("mark-sheet-" + plain(classSet.title()) + ".csv"))
                .contentType(CSV)
                .body(file.write());
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
