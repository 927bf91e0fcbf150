package wallplate.web.privacy;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.privacy.Erasing;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** Erasing one learner. */
@Controller
class OneLearnerController {

    private final Erasing erasing;
    private final Words words;

    OneLearnerController(Erasing erasing, Words words) {
        this.erasing = erasing;
        this.words = words;
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
