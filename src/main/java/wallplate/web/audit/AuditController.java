package wallplate.web.audit;

import java.util.Arrays;
import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.audit.AuditEntry;
import wallplate.audit.AuditTrail;
import wallplate.web.page.Words;

/** The page that shows the audit trail, the newest first. */
@Controller
class AuditController {

    private static final int ENTRIES = 50;

    private final AuditTrail trail;
    private final Words words;

    AuditController(AuditTrail trail, Words words) {
        this.trail = trail;
        this.words = words;
    }

    /** An entry and what was done in the reader's language. */
    record Row(AuditEntry entry, String act) {}

    @GetMapping("/audit")
    String trail(
            @RequestParam(defaultValue = "9223372036854775807") long before,
            @RequestParam(defaultValue = "") String containing,
            Model model) {
        List<AuditEntry> entries = trail.page(before, containing.strip(), ENTRIES);
        model.addAttribute(
                "rows",
                entries.stream().map(entry -> new Row(entry, act(entry.act()))).toList());
        model.addAttribute("containing", containing.strip());
        model.addAttribute(
                "older", entries.size() < ENTRIES ? null : entries.get(ENTRIES - 1).number());
        return "audit/trail";
    }

    /** An act is a method and an address, or the word of an event with its figures. */
    private String act(String act) {
        String[] parts = act.split(" ");
        if (parts.length > 1 && parts[1].startsWith("/")) {
            return words.say(HttpMethod.GET.matches(parts[0]) ? "audit.export" : "audit.change");
        }
        Object[] figures = Arrays.copyOfRange(parts, 1, parts.length);
        return words.sayOr(act, "audit.event." + parts[0], figures);
    }
}
