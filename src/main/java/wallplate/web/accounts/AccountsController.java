package wallplate.web.accounts;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
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
import wallplate.accounts.OneTimeLinks;
import wallplate.accounts.Role;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** The administrator's pages: who has an account, what each may do, and links to set a password. */
@Controller
class AccountsController {

    private final Accounts accounts;
    private final OneTimeLinks links;
    private final LinkAddress address;
    private final Words words;

    AccountsController(Accounts accounts, OneTimeLinks links, LinkAddress address, Words words) {
        this.accounts = accounts;
        this.links = links;
        this.address = address;
        this.words = words;
    }

    @GetMapping("/accounts")
    String all(Model model) {
        model.addAttribute("accounts", accounts.all());
        return "accounts/all";
    }

    @GetMapping("/accounts/new")
    String form(Model model) {
        return form("", EnumSet.of(Role.TEACHER), Map.of(), model);
    }

    private String form(String name, Set<Role> roles, Map<String, String> faults, Model model) {
        model.addAttribute("name", name);
        model.addAttribute("chosen", roles);
        model.addAttribute("roles", Role.values());
        model.addAttribute("faults", faults);
        return "accounts/form";
    }

    @PostMapping("/accounts")
    String add(
            @RequestParam(defaultValue = "") String name,
            @RequestParam(name = "role", required = false) @Nullable List<String> chosen,
            Model model,
            HttpServletResponse response) {
        Set<Role> roles = roles(chosen);
        String typed = name.strip();
        Map<String, String> faults = new LinkedHashMap<>();
        AccountName.fault(typed).ifPresent(key -> faults.put("name", words.say(key)));
        if (roles.isEmpty()) {
            faults.put("roles", words.say("accounts.roles.none"));
        }
        Optional<Account> added = faults.isEmpty() ? accounts.add(typed, roles) : Optional.empty();
        if (added.isEmpty()) {
            if (faults.isEmpty()) {
                faults.put("name", words.say("accounts.name.taken"));
            }
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return form(typed, roles, faults, model);
        }
        return link(added.get(), model);
    }

    /** Shown on this page and nowhere else: it is not kept. */
    private String link(Account account, Model model) {
        model.addAttribute("account", account);
        model.addAttribute("link", address.of(links.make(account.id())));
        model.addAttribute("hours", OneTimeLinks.LASTS.toHours());
        return "accounts/link";
    }

    @GetMapping("/accounts/{id}")
    String one(@PathVariable long id, Model model) {
        return show(found(id), model);
    }

    private String show(Account account, Model model) {
        model.addAttribute("account", account);
        model.addAttribute("roles", Role.values());
        return "accounts/one";
    }

    @PostMapping("/accounts/{id}/roles")
    String roles(
            @PathVariable long id,
            @RequestParam(name = "role", required = false) @Nullable List<String> chosen,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Account account = found(id);
        Set<Role> roles = roles(chosen);
        String wrong = roles.isEmpty()
                ? "accounts.roles.none"
                : accounts.setRoles(id, roles) ? "" : "accounts.last-administrator";
        return answer(account, wrong, "accounts.roles.done", model, response, redirect);
    }

    @PostMapping("/accounts/{id}/blocked")
    String block(
            @PathVariable long id,
            @RequestParam boolean blocked,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Account account = found(id);
        String wrong = accounts.setBlocked(id, blocked) ? "" : "accounts.last-administrator";
        return answer(
                account, wrong, blocked ? "accounts.blocked.done" : "accounts.opened.done", model, response, redirect);
    }

    private String answer(
            Account account,
            String wrong,
            String done,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!wrong.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("wrong", words.say(wrong));
            return show(account, model);
        }
        redirect.addFlashAttribute("done", words.say(done));
        return "redirect:/accounts/" + account.id();
    }

    @PostMapping("/accounts/{id}/link")
    String newLink(@PathVariable long id, Model model) {
        return link(found(id), model);
    }

    private static Set<Role> roles(@Nullable List<String> chosen) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        Arrays.stream(Role.values())
                .filter(role -> chosen != null && chosen.contains(role.word()))
                .forEach(roles::add);
        return roles;
    }

    private Account found(long id) {
        return accounts.find(id).orElseThrow(() -> new NotFound(words.say("accounts.missing")));
    }
}
