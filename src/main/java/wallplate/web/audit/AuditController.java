package wallplate.web.audit;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.audit.AuditEntry;
import wallplate.audit.AuditTrail;

/** The page that shows the audit trail, the newest first. */
@Controller
class AuditController {

    private static final int ENTRIES = 50;

    private final AuditTrail trail;

    AuditController(AuditTrail trail) {
        this.trail = trail;
    }

    @GetMapping("/audit")
    String trail(
            @RequestParam(defaultValue = "9223372036854775807") long before,
            @RequestParam(defaultValue = "") String containing,
            Model model) {
        List<AuditEntry> entries = trail.page(before, containing.strip(), ENTRIES);
        model.addAttribute("entries", entries);
        model.addAttribute("containing", containing.strip());
        model.addAttribute(
                "older", entries.size() < ENTRIES ? null : entries.get(ENTRIES - 1).number());
        return "audit/trail";
    }
}
