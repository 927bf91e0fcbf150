package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.audit.AuditedEvent;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.web.page.Words;

/** The head of department hands records over: one class, set, task or mark sheet, or everything that somebody has. */
@Controller
class HandoverController {

    private static final String NOBODY = "nobody";

    private final Belongings belongings;
    private final Accounts accounts;
    private final Teachers teachers;
    private final ApplicationEventPublisher events;
    private final Words words;

    HandoverController(
            Belongings belongings,
            Accounts accounts,
            Teachers teachers,
            ApplicationEventPublisher events,
            Words words) {
        this.belongings = belongings;
        this.accounts = accounts;
        this.teachers = teachers;
        this.events = events;
        this.words = words;
    }

    /**
     * What somebody has.
     *
     * @param value what the form sends to name the account
     */
    record Row(String value, String name, Belongings.Holding holding) {}

    @GetMapping("/handover")
    String page(Model model) {
        model.addAttribute("rows", rows());
        return "accounts/handover";
    }

    private List<Row> rows() {
        return belongings.holdings().stream()
                .filter(holding -> holding.all() > 0)
                .map(holding -> new Row(
                        holding.account().map(String::valueOf).orElse(NOBODY),
                        holding.account()
                                .flatMap(accounts::find)
                                .map(Account::name)
                                .orElseGet(() -> words.say("handover.nobody")),
                        holding))
                .toList();
    }

    @PostMapping("/handover")
    String everything(
            @RequestParam(defaultValue = "") String from,
            @RequestParam(required = false) @Nullable Long to,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Optional<Row> giver = rows().stream().filter(row -> row.value().equals(from)).findFirst();
        Optional<Account> taker = teachers.find(to);
        if (giver.isEmpty() || taker.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("wrong", words.say("handover.choose"));
            return page(model);
        }
        int number = belongings.handOver(giver.get().holding().account(), taker.get().id());
        events.publishEvent(new AuditedEvent(
                "handed-all-over %d %d".formatted(number, taker.get().id()),
                giver.get().holding().account().map(id -> "account " + id).orElse(NOBODY)));
        redirect.addFlashAttribute("done", words.say("handover.all.done", number, taker.get().name()));
        return "redirect:/handover";
    }

    @PostMapping("/classes/{id}/owner")
    String schoolClass(@PathVariable long id, @RequestParam(required = false) @Nullable Long to, RedirectAttributes redirect) {
        return give(Kind.CLASS, id, "/classes/", to, redirect);
    }

    @PostMapping("/class-sets/{id}/owner")
    String classSet(@PathVariable long id, @RequestParam(required = false) @Nullable Long to, RedirectAttributes redirect) {
        return give(Kind.CLASS_SET, id, "/class-sets/", to, redirect);
    }

    @PostMapping("/tasks/{id}/owner")
    String task(@PathVariable long id, @RequestParam(required = false) @Nullable Long to, RedirectAttributes redirect) {
        return give(Kind.TASK, id, "/tasks/", to, redirect);
    }

    @PostMapping("/mark-sheets/{id}/owner")
    String markSheet(@PathVariable long id, @RequestParam(required = false) @Nullable Long to, RedirectAttributes redirect) {
        return give(Kind.MARK_SHEET, id, "/mark-sheets/", to, redirect);
    }

    private String give(Kind kind, long id, String pages, @Nullable Long to, RedirectAttributes redirect) {
        Optional<Account> taker = teachers.find(to);
        if (taker.isEmpty()) {
            redirect.addFlashAttribute("wrong", words.say("handover.choose"));
        } else {
            belongings.give(kind, id, taker.get().id());
            events.publishEvent(new AuditedEvent("handed-over " + taker.get().id(), pages + id));
            redirect.addFlashAttribute("done", words.say("handover.done", taker.get().name()));
        }
        return "redirect:" + pages + id;
    }
}
