package wallplate.web.help;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The help of the application, written for the person at the screen. */
@Controller
class HelpController {

    @GetMapping("/help")
    String help() {
        return "help/help";
    }
}
