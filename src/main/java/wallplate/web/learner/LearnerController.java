package wallplate.web.learner;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import wallplate.assessment.AssessedSheet;
import wallplate.drafting.ConstructionGuide;
import wallplate.marking.Reasons;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/**
 * Check my drawing: a task code, a photograph, advice.
 *
 * <p>The answer to a photograph is a page at once and no redirect, because nothing is kept to which one could lead.
 */
@Controller
class LearnerController {

    private static final String BEFORE = "was.";
    private static final int LONGEST_CODE = 12;

    private final Tasks tasks;
    private final SelfCheck check;
    private final Words words;

    LearnerController(Tasks tasks, SelfCheck check, Words words) {
        this.tasks = tasks;
        this.check = check;
        this.words = words;
    }

    @GetMapping("/check")
    String enter() {
        return "learner/enter";
    }

    @PostMapping("/check")
    String open(@RequestParam(defaultValue = "") String code, Model model, HttpServletResponse response) {
        String typed = code.replaceAll("\\s", "");
        if (typed.length() <= LONGEST_CODE && tasks.byLearnerCode(typed).isPresent()) {
            return "redirect:/check/" + tasks.byLearnerCode(typed).get().learnerCode();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("code", code.substring(0, Math.min(code.length(), LONGEST_CODE)));
        model.addAttribute("fault", words.say(typed.isEmpty() ? "learner.code.missing" : "learner.code.unknown"));
        return "learner/enter";
    }

    @GetMapping("/check/{code}")
    String task(@PathVariable String code, Model model) {
        model.addAttribute("kept", found(code));
        return "learner/task";
    }

    @PostMapping("/check/{code}")
    String photograph(
            @PathVariable String code,
            @RequestParam(required = false) @Nullable MultipartFile photograph,
            @RequestParam Map<String, String> fields,
            Locale language,
            Model model,
            HttpServletResponse response)
            throws IOException {
        KeptTask kept = found(code);
        model.addAttribute("kept", kept);
        if (photograph == null || photograph.isEmpty()) {
            return refuse(words.say("learner.photograph.missing"), HttpStatus.UNPROCESSABLE_CONTENT, model, response);
        }
        String name = Optional.ofNullable(photograph.getOriginalFilename()).orElse("photograph");
        Optional<AssessedSheet> assessed = check.assess(name, photograph.getBytes(), kept.task(), language);
        if (assessed.isEmpty()) {
            return refuse(words.say("learner.busy"), HttpStatus.SERVICE_UNAVAILABLE, model, response);
        }
        if (assessed.get() instanceof AssessedSheet.Read read) {
            model.addAttribute("result", CheckResult.of(read, before(fields)));
            return "learner/result";
        }
        String reason = Reasons.in(language).say(((AssessedSheet.Unreadable) assessed.get()).reason());
        return refuse(reason, HttpStatus.UNPROCESSABLE_CONTENT, model, response);
    }

    private static String refuse(String reason, HttpStatus status, Model model, HttpServletResponse response) {
        response.setStatus(status.value());
        model.addAttribute("fault", reason);
        return "learner/task";
    }

    private static Map<String, String> before(Map<String, String> fields) {
        Map<String, String> before = new LinkedHashMap<>();
        fields.forEach((name, value) -> {
            if (name.startsWith(BEFORE)) {
                before.put(name.substring(BEFORE.length()), value);
            }
        });
        return before;
    }

    /** How the drawing is made, step by step. */
    @GetMapping("/check/{code}/guide")
    String guide(@PathVariable String code, Model model) {
        KeptTask kept = found(code);
        model.addAttribute("kept", kept);
        model.addAttribute("steps", ConstructionGuide.of(kept.task()).steps());
        model.addAttribute("area", "check");
        return "tasks/guide";
    }

    private KeptTask found(String code) {
        return Optional.of(code)
                .filter(typed -> typed.length() <= LONGEST_CODE)
                .flatMap(tasks::byLearnerCode)
                .orElseThrow(() -> new NotFound(words.say("learner.code.unknown")));
    }
}
