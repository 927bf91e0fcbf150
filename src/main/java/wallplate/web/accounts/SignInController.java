package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Duration;
import java.util.regex.Pattern;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.accounts.Account;
import wallplate.accounts.SignIn;
import wallplate.audit.AuditTrail;
import wallplate.web.access.AccountSessions;
import wallplate.web.access.SchoolProvider;
import wallplate.web.access.Visitor;
import wallplate.web.page.Words;

/** Signing in with a name and a password, and out again. Both are written to the audit trail. */
@Controller
class SignInController {

    /** A path of this program and its query, and never another host. */
    private static final Pattern OURS = Pattern.compile("/(?![/\\\\])[\\x21-\\x5B\\x5D-\\x7E]{0,1000}");

    /** What stands in the address of whoever comes back from the provider in vain. */
    private static final String REFUSED = "refused";

    /** The same of whoever signed out here, and is signed in there still. */
    private static final String LEFT = "left";

    private final SignIn signIn;
    private final AccountSessions sessions;
    private final AuditTrail trail;
    private final Visitor visitor;
    private final SchoolProvider provider;
    private final Words words;

    SignInController(
            SignIn signIn,
            AccountSessions sessions,
            AuditTrail trail,
            Visitor visitor,
            SchoolProvider provider,
            Words words) {
        this.signIn = signIn;
        this.sessions = sessions;
        this.trail = trail;
        this.visitor = visitor;
        this.provider = provider;
        this.words = words;
    }

    @GetMapping("/sign-in")
    String form(
            @RequestParam(defaultValue = "/") String next,
            @RequestParam(name = "provider", defaultValue = "") String cameBack,
            Model model,
            HttpServletRequest request) {
        if (REFUSED.equals(cameBack)) {
            model.addAttribute("fault", words.say("sign-in.provider.refused"));
        } else if (LEFT.equals(cameBack) && provider.isSet()) {
            model.addAttribute("signedOut", true);
            provider.signingOutThere(request).ifPresent(there -> model.addAttribute("signingOutThere", there));
        }
        return show("", next, model);
    }

    private static String show(String name, String next, Model model) {
        model.addAttribute("name", name);
        model.addAttribute("next", OURS.matcher(next).matches() ? next : "/");
        return "accounts/sign-in";
    }

    @PostMapping("/sign-in")
    String signIn(
            @RequestParam(defaultValue = "") String name,
            @RequestParam(defaultValue = "") String password,
            @RequestParam(defaultValue = "/") String next,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        String typed = name.strip();
        if (typed.isEmpty() || typed.length() > Account.LONGEST_NAME || password.isEmpty()) {
            return refuse(typed, next, "sign-in.missing", model, response);
        }
        SignIn.Outcome outcome = signIn.with(typed, password, request.getRemoteAddr(), provider::opensByPassword);
        if (outcome instanceof SignIn.SignedIn signedIn) {
            sessions.begin(signedIn.account(), request);
            trail.append(signedIn.account().name(), "sign-in", "account " + signedIn.account().id());
            return "redirect:" + (OURS.matcher(next).matches() ? next : "/");
        }
        if (outcome instanceof SignIn.Wait wait) {
            response.setStatus(HttpStatus.TOO_MANY_REQUESTS.value());
            response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(seconds(wait.left())));
            model.addAttribute("fault", words.say("sign-in.wait", seconds(wait.left())));
            return show(typed, next, model);
        }
        ((SignIn.Refused) outcome)
                .account()
                .ifPresentOrElse(
                        account -> trail.append(account.name(), "sign-in-refused", "account " + account.id()),
                        () -> trail.append("unknown", "sign-in-refused", "no account of the name that was typed"));
        return refuse(
                typed, next, provider.limitsPasswords() ? "sign-in.refused.limited" : "sign-in.refused", model, response);
    }

    private String refuse(String name, String next, String why, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("fault", words.say(why));
        return show(name, next, model);
    }

    private static long seconds(Duration left) {
        return left.plusMillis(999).toSeconds();
    }

    @PostMapping("/sign-out")
    String signOut(HttpServletRequest request) {
        visitor.account()
                .filter(account -> !account.isDemonstration())
                .ifPresent(account -> trail.append(account.name(), "sign-out", "account " + account.id()));
        HttpSession session = request.getSession(false);
        boolean beganThere = provider.began(session);
        if (session != null) {
            session.invalidate();
        }
        return beganThere ? "redirect:/sign-in?provider=" + LEFT : "redirect:/sign-in";
    }
}
