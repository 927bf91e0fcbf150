package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
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
import wallplate.accounts.SignIn;
import wallplate.web.access.AccountSessions;
import wallplate.web.access.SchoolProvider;
import wallplate.web.access.Visitor;
import wallplate.web.page.Words;

/** One's own account: another password, an end to sessions elsewhere. */
@Controller
class OwnAccountController {

    private final Accounts accounts;
    private final Passwords passwords;
    private final SignIn signIn;
    private final AccountSessions sessions;
    private final Visitor visitor;
    private final SchoolProvider provider;
    private final Words words;

    OwnAccountController(
            Accounts accounts, Passwords passwords, SignIn signIn, AccountSessions sessions, Visitor visitor, SchoolProvider provider, Words words) {
        this.accounts = accounts;
        this.passwords = passwords;
        this.signIn = signIn;
        this.sessions = sessions;
        this.visitor = visitor;
        this.provider = provider;
        this.words = words;
    }

    @GetMapping("/account")
    String own(@RequestParam(required = false) @Nullable Boolean bound, Model model) {
        if (bound != null) {
            model.addAttribute(
                    bound ? "done" : "wrong",
                    words.say(bound ? "account.provider.done" : "account.provider.taken", provider.name()));
        }
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
        if (account.hasPassword() && !matches(account, present, request)) {
            faults.put("present", words.say("password.present.wrong"));
        }
        if (!faults.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return show(faults, model);
        }
        passwords.set(account, password);
        return goOn("account.password.done", request, redirect);
    }

    /** Begins to bind the account to whoever the holder is at the provider; the password is asked for once more. */
    @PostMapping("/account/provider")
    String bind(
            @RequestParam(defaultValue = "") String present,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        Account account = account();
        if (!provider.isSet() || provider.isBound(account) || !matches(account, present, request)) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return show(Map.of("bind", words.say("password.present.wrong")), model);
        }
        provider.beginBinding(account, request);
        model.addAttribute("bindingReady", true);
        return show(Map.of(), model);
    }

    @PostMapping("/account/sign-out-elsewhere")
    String signOutElsewhere(HttpServletRequest request, RedirectAttributes redirect) {
        accounts.endSessions(account().id());
        return goOn("account.elsewhere.done", request, redirect);
    }

    /** With the same waits as when signing in: an open session is no place to guess from. */
    private boolean matches(Account account, String present, HttpServletRequest request) {
        return signIn.with(account.name(), present, request.getRemoteAddr()) instanceof SignIn.SignedIn;
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
