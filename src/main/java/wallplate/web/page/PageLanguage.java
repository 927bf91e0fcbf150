package wallplate.web.page;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.servlet.LocaleResolver;
import org.springframework.web.util.WebUtils;

/**
 * The language of a page: the one chosen on a page before, else the first of those that the browser asks for.
 *
 * <p>Pages for learners, the construction guide's and the guideline's are there in every language; all others are wholly English, so that no page
 * mixes two.
 */
@Component("localeResolver")
public class PageLanguage implements LocaleResolver {

    /** The cookie that remembers what was chosen. */
    static final String COOKIE = "language";

    static final List<Locale> ALL = List.of(Locale.ENGLISH, Locale.GERMAN);

    private static final Pattern IN_EVERY_LANGUAGE = Pattern.compile("/check(/[^/]+(/guide|/keep|/end|/results/[^/]+)?)?|/feedback(/.*)?|/language"
            + "|/tasks/\\d+/(guideline(/.*)?|guide(\\.pdf)?)|/class-sets/\\d+/(guideline|feedback-(codes|files)|feedback\\.(pdf|zip))"
            + "|/sheets/\\d+/feedback\\.pdf|/audit|/privacy(/run)?|/learners/\\d+/(erase|everything(\\.zip)?)|/sign-in|/set-password(/.*)?|/accounts?(/.*)?|/handover");

    @Override
    public Locale resolveLocale(HttpServletRequest request) {
        if (!IN_EVERY_LANGUAGE.matcher(addressOf(request)).matches()) {
            return Locale.ENGLISH;
        }
        return chosen(request)
                .or(() -> Collections.list(request.getLocales()).stream()
                        .flatMap(wanted -> named(wanted.getLanguage()).stream())
                        .findFirst())
                .orElse(Locale.ENGLISH);
    }

    private static Optional<Locale> chosen(HttpServletRequest request) {
        return Optional.ofNullable(WebUtils.getCookie(request, COOKIE))
                .map(Cookie::getValue)
                .flatMap(PageLanguage::named);
    }

    /** The language of that name, where pages are there in it. */
    static Optional<Locale> named(@Nullable String language) {
        return ALL.stream().filter(one -> one.getLanguage().equals(language)).findFirst();
    }

    @Override
    public void setLocale(HttpServletRequest request, @Nullable HttpServletResponse response, @Nullable Locale locale) {
        throw new UnsupportedOperationException("a language is chosen by its cookie");
    }

    /** The languages that the page at hand can be read in; none where it is there in English only. */
    public List<Locale> offered() {
        return request()
                .filter(request -> IN_EVERY_LANGUAGE.matcher(addressOf(request)).matches())
                .map(request -> ALL)
                .orElse(List.of());
    }

    /** The address of the page at hand, to come back to. */
    public String address() {
        return request().map(PageLanguage::addressOf).orElse("/");
    }

    /** On the page that says what went wrong, the address where it did. */
    private static String addressOf(HttpServletRequest request) {
        return request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI) instanceof String failed
                ? failed
                : request.getRequestURI();
    }

    private static Optional<HttpServletRequest> request() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
                ? Optional.of(attributes.getRequest())
                : Optional.empty();
    }
}
