package wallplate.web.privacy;

import java.io.IOException;
import java.security.Principal;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.privacy.Retention;
import wallplate.web.page.Person;
import wallplate.web.page.Words;

/** How long each kind of data stays, and what the next run takes away. */
@Controller
class RetentionController {

    private final Retention retention;
    private final Words words;

    RetentionController(Retention retention, Words words) {
        this.retention = retention;
        this.words = words;
    }

    @GetMapping("/privacy")
    String listing(Model model) {
        List<Retention.Listed> listed = retention.listing();
        model.addAttribute("listed", listed);
        model.addAttribute("due", listed.stream().mapToLong(one -> one.found().number()).sum());
        return "privacy/retention";
    }

    /** At once what the daily run would do. */
    @PostMapping("/privacy/run")
    String run(@Nullable Principal person, RedirectAttributes redirect) throws IOException {
        List<Retention.Taken> taken = retention.run(Person.name(person));
        redirect.addFlashAttribute(
                "done",
                taken.isEmpty()
                        ? words.say("privacy.nothing")
                        : words.say("privacy.taken") + " "
                                + taken.stream()
                                        .map(one -> words.say("privacy.kind." + one.kind().word()) + " " + one.number())
                                        .collect(Collectors.joining(", "))
                                + ".");
        return "redirect:/privacy";
    }
}
