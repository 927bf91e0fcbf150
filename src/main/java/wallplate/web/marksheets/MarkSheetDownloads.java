package wallplate.web.marksheets;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.MarkSheetTables;
import wallplate.marksheets.SignedMarkSheet;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;
import wallplate.web.page.TableDownload;

/** Mark sheets as files. */
@Controller
class MarkSheetDownloads {

    private final MarkSheetBook book;
    private final Reach reach;

    MarkSheetDownloads(MarkSheetBook book, Reach reach) {
        this.book = book;
        this.reach = reach;
    }

    @GetMapping("/mark-sheets/{id}/mark-sheet.csv")
    ResponseEntity<byte[]> csv(@PathVariable long id) throws IOException {
        MarkSheet sheet = found(id);
        return TableDownload.csv(MarkSheetTables.of(sheet), name(sheet));
    }

    @GetMapping("/mark-sheets/{id}/mark-sheet.xlsx")
    ResponseEntity<byte[]> xlsx(@PathVariable long id) throws IOException {
        MarkSheet sheet = found(id);
        return TableDownload.xlsx(MarkSheetTables.of(sheet), name(sheet));
    }

    @GetMapping("/mark-sheets/{id}/mark-sheet.pdf")
    ResponseEntity<byte[]> pdf(@PathVariable long id) throws IOException {
        MarkSheet sheet = found(id);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SignedMarkSheet.write(sheet, out);
        return TableDownload.of(MediaType.APPLICATION_PDF, name(sheet) + ".pdf", out.toByteArray());
    }

    @GetMapping("/mark-sheets/term.xlsx")
    ResponseEntity<byte[]> termXlsx(@RequestParam String year, @RequestParam String term) throws IOException {
        return TableDownload.xlsx(MarkSheetTables.ofTerm(term, book.submitted(year, term, reach.share())), "marks-" + year + "-" + term);
    }

    @GetMapping("/mark-sheets/term.csv")
    ResponseEntity<byte[]> termCsv(@RequestParam String year, @RequestParam String term) throws IOException {
        return TableDownload.csv(MarkSheetTables.ofTerm(term, book.submitted(year, term, reach.share())), "marks-" + year + "-" + term);
    }

    private static String name(MarkSheet sheet) {
        return "mark-sheet-" + sheet.heading().title();
    }

    private MarkSheet found(long id) {
        return book.find(id).orElseThrow(() -> new NotFound("There is no mark sheet " + id + "."));
    }
}
