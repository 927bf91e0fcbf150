package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.OneTimeLinks;
import wallplate.accounts.Passwords;
import wallplate.accounts.Role;
import wallplate.audit.AuditTrail;
import wallplate.web.access.AccountSessions;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** What a one-time link opens: setting the password of an account, or making the first administrator. */
@Controller
class PasswordLinkController {

    private final OneTimeLinks links;
    private final Accounts accounts;
    private final Passwords passwords;
    private final AccountSessions sessions;
    private final AuditTrail trail;
    private final TransactionTemplate transaction;
    private final Words words;

    PasswordLinkController(
            OneTimeLinks links,
            Accounts accounts,
            Passwords passwords,
            AccountSessions sessions,
            AuditTrail trail,
            TransactionTemplate transaction,
            Words words) {
        this.links = links;
        this.accounts = accounts;
        this.passwords = passwords;
        this.sessions = sessions;
        this.trail = trail;
        this.transaction = transaction;
        this.words = words;
    }

    @GetMapping("/set-password/{token}")
    String form(@PathVariable String token, Model model) {
        return show(token, account(token), "", Map.of(), model);
    }

    private String show(
            String token, Optional<Account> account, String name, Map<String, String> faults, Model model) {
        model.addAttribute("title", words.say(account.isEmpty() ? "set-password.first.title" : "set-password.title"));
        model.addAttribute("token", token);
        model.addAttribute("account", account.orElse(null));
        model.addAttribute("name", name);
        model.addAttribute("faults", faults);
        model.addAttribute("shortest", Passwords.SHORTEST);
        return "accounts/set-password";
    }

    /** The link does not stand in this address: addresses are written to the audit trail. */
    @PostMapping("/set-password")
    String set(
            @RequestParam(defaultValue = "") String token,
            @RequestParam(defaultValue = "") String name,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String again,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Optional<Account> account = account(token);
        String typed = name.strip();
        Map<String, String> faults =
                new LinkedHashMap<>(PasswordForm.faults(passwords, words, account.map(Account::name).orElse(typed), password, again));
        if (account.isEmpty()) {
            AccountName.fault(typed).ifPresent(key -> faults.put("name", words.say(key)));
        }
        if (!faults.isEmpty()) {
            return again(token, account, typed, faults, model, response);
        }
        if (account.isEmpty() && accounts.named(typed).isPresent()) {
            return again(token, account, typed, Map.of("name", words.say("accounts.name.taken")), model, response);
        }
        Account set = transaction.execute(state -> use(token, account, typed, password));
        accounts.signedIn(set.id());
        sessions.begin(accounts.find(set.id()).orElseThrow(), request);
        trail.append(set.name(), "password-set", "account " + set.id());
        redirect.addFlashAttribute("done", words.say("set-password.done"));
        return "redirect:/";
    }

    /** All of it or nothing: a link is used up only where the password was set. */
    private Account use(String token, Optional<Account> account, String name, String password) {
        if (!links.use(token)) {
            throw gone();
        }
        Account whose = account.or(() -> accounts.add(name, EnumSet.of(Role.ADMINISTRATOR)))
                .orElseThrow(this::gone);
        passwords.set(whose, password);
        return whose;
    }

    private String again(
            String token,
            Optional<Account> account,
            String name,
            Map<String, String> faults,
            Model model,
            HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return show(token, account, name, faults, model);
    }

    /** Whose password the link sets; nobody's yet where it makes the first administrator. */
    private Optional<Account> account(String token) {
        OneTimeLinks.Opened opened = links.open(token).orElseThrow(this::gone);
        if (opened.accountId().isEmpty() && !accounts.with(Role.ADMINISTRATOR).isEmpty()) {
            throw gone();
        }
        Optional<Account> account = opened.accountId().flatMap(accounts::find);
        if (account.filter(Account::blocked).isPresent()) {
            throw gone();
        }
        return account;
    }

    private NotFound gone() {
        return new NotFound(words.say("set-password.gone"));
    }
}
