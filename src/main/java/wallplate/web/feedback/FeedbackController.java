package wallplate.web.feedback;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Optional;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.CacheControl;
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
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Reasons;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.PageFacts;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;
import wallplate.handouts.SheetDocuments;

/** A learner's own feedback: a code opens one sheet of a set whose marks are released, and nothing else. */
@Controller
class FeedbackController {

    /** A code with its hyphens, and some room for the spaces that people type. */
    private static final int LONGEST_CODE = 24;

    private final FeedbackCodes codes;
    private final Sheets sheets;
    private final ClassSets classSets;
    private final ScanStore store;
    private final SheetDocuments documents;
    private final Words words;

    FeedbackController(
            FeedbackCodes codes,
            Sheets sheets,
            ClassSets classSets,
            ScanStore store,
            SheetDocuments documents,
            Words words) {
        this.codes = codes;
        this.sheets = sheets;
        this.classSets = classSets;
        this.store = store;
        this.documents = documents;
        this.words = words;
    }

    /** A sheet and its set. */
    private record Opened(SheetEntry sheet, ClassSet classSet) {
        boolean isReleased() {
            return classSet.releasedAt().isPresent();
        }
    }

    @GetMapping("/feedback")
    String enter() {
        return "feedback/enter";
    }

    @PostMapping("/feedback")
    String open(@RequestParam(defaultValue = "") String code, Model model, HttpServletResponse response) {
        String typed = code.strip();
        if (opened(typed).isPresent()) {
            return "redirect:/feedback/" + typed.replaceAll("[^\\p{Alnum}]", "");
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("code", typed.substring(0, Math.min(typed.length(), LONGEST_CODE)));
        model.addAttribute("fault", words.say(typed.isEmpty() ? "feedback.code.missing" : "feedback.code.unknown"));
        return "feedback/enter";
    }

    @GetMapping("/feedback/{code}")
    String one(@PathVariable String code, Locale language, Model model, HttpServletResponse response) {
        Opened opened = opened(code).orElseThrow(this::unknown);
        keepToOneself(response);
        model.addAttribute("classSet", opened.classSet());
        if (!opened.isReleased()) {
            return "feedback/waiting";
        }
        model.addAttribute("code", code);
        model.addAttribute("sheet", opened.sheet());
        AssessedSheet assessed = documents.withoutPicture(opened.classSet(), opened.sheet(), language);
        if (assessed instanceof AssessedSheet.Read read) {
            PageFacts page = sheets.assessment(opened.sheet().id()).orElseThrow().page();
            model.addAttribute("feedback", LearnerFeedback.of(read, page, language));
            return "feedback/one";
        }
        model.addAttribute("reason", Reasons.in(language).say(((AssessedSheet.Unreadable) assessed).reason()));
        return "feedback/unreadable";
    }

    /** A page that only its reader should find again, and no search engine at all. */
    private static void keepToOneself(HttpServletResponse response) {
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        response.setHeader("X-Robots-Tag", "noindex");
    }

    @GetMapping("/feedback/{code}/page.png")
    ResponseEntity<InputStreamResource> page(@PathVariable String code) {
        return picture(released(code).sheet().pagePicture());
    }

    @GetMapping("/feedback/{code}/screen.png")
    ResponseEntity<InputStreamResource> screen(@PathVariable String code) {
        return picture(released(code).sheet().screenPicture());
    }

    private ResponseEntity<InputStreamResource> picture(Optional<String> name) {
        try {
            InputStream content = store.open(name.orElseThrow(this::unknown));
            return ResponseEntity.ok()
                    .cacheControl(CacheControl.noStore())
                    .contentType(MediaType.IMAGE_PNG)
                    .body(new InputStreamResource(content));
        } catch (IOException gone) {
            throw new NotFound(words.say("feedback.picture.gone"));
        }
    }

    @GetMapping("/feedback/{code}/feedback.pdf")
    ResponseEntity<byte[]> pdf(@PathVariable String code, Locale language) throws IOException {
        Opened opened = released(code);
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .contentType(MediaType.APPLICATION_PDF)
                .body(documents.feedback(opened.classSet(), opened.sheet(), language));
    }

    private Opened released(String code) {
        return opened(code).filter(Opened::isReleased).orElseThrow(this::unknown);
    }

    private Optional<Opened> opened(String code) {
        return Optional.of(code)
                .filter(typed -> typed.length() <= LONGEST_CODE)
                .flatMap(codes::sheetOf)
                .flatMap(sheets::find)
                .flatMap(sheet -> classSets.find(sheet.classSetId()).map(classSet -> new Opened(sheet, classSet)));
    }

    private NotFound unknown() {
        return new NotFound(words.say("feedback.code.unknown"));
    }
}
