package wallplate.web.page;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Remembers the language that a reader chose. */
@Controller
class LanguageController {

    private static final Duration REMEMBERED = Duration.ofDays(365);

    @PostMapping("/language")
    String choose(
            @RequestParam String language, @RequestParam(defaultValue = "/") String back, HttpServletResponse response) {
        PageLanguage.named(language).ifPresent(chosen -> response.addHeader(
                HttpHeaders.SET_COOKIE,
                ResponseCookie.from(PageLanguage.COOKIE, chosen.getLanguage())
                        .path("/")
                        .httpOnly(true)
                        .sameSite("Lax")
                        .maxAge(REMEMBERED)
                        .build()
                        .toString()));
        return "redirect:" + (isOurs(back) ? back : "/");
    }

    /** Whether an address stays within this program: nobody is sent elsewhere from here. */
    private static boolean isOurs(String address) {
        return address.matches("/([\\w.~-][\\w.~/-]*)?");
    }
}
