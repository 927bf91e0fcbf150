package wallplate.web.privacy;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.privacy.Erasing;
import wallplate.privacy.LearnerExport;
import wallplate.records.ClassSet;
import wallplate.records.SheetEntry;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;
import wallplate.web.sheet.SheetDocuments;

/** Everything about one learner as a file, and erasing that learner. */
@Controller
class OneLearnerController {

    private static final MediaType ZIP = new MediaType("application", "zip");

    private final LearnerExport export;
    private final Erasing erasing;
    private final SheetDocuments documents;
    private final Words words;

    OneLearnerController(LearnerExport export, Erasing erasing, SheetDocuments documents, Words words) {
        this.export = export;
        this.erasing = erasing;
        this.documents = documents;
        this.words = words;
    }

    @GetMapping("/learners/{id}/everything.zip")
    ResponseEntity<StreamingResponseBody> everything(@PathVariable long id, Locale language) {
        if (!export.isThere(id)) {
            throw missing(id);
        }
        ContentDisposition name =
                ContentDisposition.attachment().filename("learner-" + id + ".zip").build();
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, name.toString())
                .contentType(ZIP)
                .body(out -> export.write(id, in(language), out));
    }

    private LearnerExport.Documents in(Locale language) {
        return new LearnerExport.Documents() {
            @Override
            public byte[] feedback(ClassSet classSet, SheetEntry sheet) throws IOException {
                return documents.feedback(classSet, sheet, language);
            }

            @Override
            public Optional<String> result(ClassSet classSet, SheetEntry sheet) {
                return documents.result(classSet, sheet);
            }
        };
    }

    @GetMapping("/learners/{id}/erase")
    String ask(@PathVariable long id, Model model) {
        Erasing.Plan plan = erasing.plan(id);
        if (plan.stays().isEmpty()) {
            throw missing(id);
        }
        model.addAttribute("id", id);
        model.addAttribute("plan", plan);
        model.addAttribute("name", plan.stays().get(plan.stays().size() - 1).name());
        return "privacy/erase";
    }

    @PostMapping("/learners/{id}/erase")
    String erase(
            @PathVariable long id,
            @RequestParam(defaultValue = "false") boolean sure,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!sure) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("fault", words.say("privacy.erase.unsure"));
            return ask(id, model);
        }
        if (erasing.plan(id).stays().isEmpty()) {
            throw missing(id);
        }
        erasing.erase(id);
        redirect.addFlashAttribute("done", words.say("privacy.erase.done"));
        return "redirect:/classes";
    }

    private static NotFound missing(long id) {
        return new NotFound("There is no learner " + id + ".");
    }
}
