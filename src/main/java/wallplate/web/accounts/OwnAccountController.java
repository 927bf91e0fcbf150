package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Passwords;
import wallplate.web.access.AccountSessions;
import wallplate.web.access.Visitor;
import wallplate.web.page.Words;

/** One's own account: another password, an end to sessions elsewhere. */
@Controller
class OwnAccountController {

    private final Accounts accounts;
    private final Passwords passwords;
    private final AccountSessions sessions;
    private final Visitor visitor;
    private final Words words;

    OwnAccountController(
            Accounts accounts, Passwords passwords, AccountSessions sessions, Visitor visitor, Words words) {
        this.accounts = accounts;
        this.passwords = passwords;
        this.sessions = sessions;
        this.visitor = visitor;
        this.words = words;
    }

    @GetMapping("/account")
    String own(Model model) {
        return show(Map.of(), model);
    }

    private String show(Map<String, String> faults, Model model) {
        model.addAttribute("account", account());
        model.addAttribute("faults", faults);
        model.addAttribute("shortest", Passwords.SHORTEST);
        return "accounts/own";
    }

    @PostMapping("/account/password")
    String password(
            @RequestParam(defaultValue = "") String present,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "") String again,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Account account = account();
        Map<String, String> faults =
                new LinkedHashMap<>(PasswordForm.faults(passwords, words, account.name(), password, again));
        if (account.hasPassword() && !passwords.matches(account, present)) {
            faults.put("present", words.say("password.present.wrong"));
        }
        if (!faults.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return show(faults, model);
        }
        passwords.set(account, password);
        return goOn("account.password.done", request, redirect);
    }

    @PostMapping("/account/sign-out-elsewhere")
    String signOutElsewhere(HttpServletRequest request, RedirectAttributes redirect) {
        accounts.endSessions(account().id());
        return goOn("account.elsewhere.done", request, redirect);
    }

    /** Every session has ended, and this one begins anew. */
    private String goOn(String done, HttpServletRequest request, RedirectAttributes redirect) {
        sessions.begin(accounts.find(account().id()).orElseThrow(), request);
        redirect.addFlashAttribute("done", words.say(done));
        return "redirect:/account";
    }

    private Account account() {
        return visitor.account().orElseThrow();
    }
}
