package wallplate.web.access;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.ViewResolver;
import org.springframework.web.util.UriComponentsBuilder;
import wallplate.accounts.Account;
import wallplate.audit.AuditTrail;
import wallplate.web.page.Words;

/**
 * What somebody sees who is turned away: the page to sign in where that may help, otherwise a plain page with a way on.
 * An address without a rule is answered like one without a page.
 */
@Component
@ConditionalOnWebApplication
class Refusal implements AccessDeniedHandler, AuthenticationEntryPoint {

    private final ViewResolver views;
    private final Words words;
    private final Reach reach;
    private final AuditTrail trail;

    Refusal(@Qualifier("thymeleafViewResolver") ViewResolver views, Words words, Reach reach, AuditTrail trail) {
        this.views = views;
        this.words = words;
        this.reach = reach;
        this.trail = trail;
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException refused)
            throws IOException, ServletException {
        if (response.isCommitted()) {
            return;
        }
        Optional<Account> who = Acting.account(SecurityContextHolder.getContext().getAuthentication());
        if (refused instanceof CsrfException) {
            plain(request, response, HttpStatus.FORBIDDEN, words.say("refused.old.title"), words.say("refused.old.sentence"));
            return;
        }
        Optional<Rule> rule = Addresses.ruleFor(request);
        if (rule.isEmpty()) {
            missing(request, response);
        } else if (who.isEmpty() || who.get().isDemonstration()) {
            signInFirst(request, response);
        } else if (rule.get().allows(who)) {
            outOfReach(rule.get(), who.get(), request, response);
        } else {
            write(who.get(), "role-refused", request);
            plain(request, response, HttpStatus.FORBIDDEN, words.say("refused.other.title"), words.say("refused.other.sentence"));
        }
    }

    /** Says the same where there is no such record, so that nobody learns what others have. What is there is written down. */
    private void outOfReach(Rule rule, Account who, HttpServletRequest request, HttpServletResponse response)
            throws IOException, ServletException {
        if (reach.isThere(rule, request)) {
            write(who, "reach-refused", request);
        }
        plain(request, response, HttpStatus.NOT_FOUND, words.say("error.missing"), words.say("refused.reach.sentence"));
    }

    private void write(Account who, String act, HttpServletRequest request) {
        trail.append(who.name(), act, request.getMethod() + " " + request.getRequestURI());
    }

    /** Nobody is signed in, and the demonstration is not open. */
    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException nobody)
            throws IOException, ServletException {
        handle(request, response, new AccessDeniedException("nobody is signed in"));
    }

    private void missing(HttpServletRequest request, HttpServletResponse response) throws IOException, ServletException {
        plain(request, response, HttpStatus.NOT_FOUND, words.say("error.missing"), words.say("error.address"));
    }

    /** Says how long to wait. */
    void tooOften(HttpServletRequest request, HttpServletResponse response, Duration wait)
            throws IOException, ServletException {
        long seconds = wait.plusSeconds(1).toSeconds();
        response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(seconds));
        plain(
                request,
                response,
                HttpStatus.TOO_MANY_REQUESTS,
                words.say("refused.often.title"),
                words.say("refused.often.sentence", seconds));
    }

    private static void signInFirst(HttpServletRequest request, HttpServletResponse response) throws IOException {
        boolean fragment = request.getHeader("HX-Request") != null;
        boolean page = String.valueOf(request.getHeader("Accept")).contains(MediaType.TEXT_HTML_VALUE);
        boolean comesBack = HttpMethod.GET.matches(request.getMethod()) && page && !fragment;
        String address = request.getRequestURI()
                + (request.getQueryString() == null ? "" : "?" + request.getQueryString());
        String signIn = UriComponentsBuilder.fromPath("/sign-in")
                .queryParamIfPresent("next", comesBack ? Optional.of("{address}") : Optional.empty())
                .encode()
                .buildAndExpand(Map.of("address", address))
                .toUriString();
        if (fragment) {
            response.setHeader("HX-Redirect", signIn);
            response.setStatus(HttpStatus.UNAUTHORIZED.value());
        } else if (page) {
            response.sendRedirect(signIn);
        } else {
            response.setStatus(HttpStatus.UNAUTHORIZED.value());
        }
    }

    private void plain(
            HttpServletRequest request, HttpServletResponse response, HttpStatus status, String title, String sentence)
            throws IOException, ServletException {
        response.setStatus(status.value());
        response.setContentType(MediaType.TEXT_HTML_VALUE + ";charset=UTF-8");
        show(request, response, Map.of("title", title, "sentence", sentence));
    }

    private void show(HttpServletRequest request, HttpServletResponse response, Map<String, String> model)
            throws IOException, ServletException {
        try {
            View page = views.resolveViewName("error/plain", request.getLocale());
            if (page == null) {
                throw new IllegalStateException("there is no page error/plain");
            }
            page.render(model, request, response);
        } catch (IOException | ServletException | RuntimeException failure) {
            throw failure;
        } catch (Exception failure) {
            throw new ServletException(failure);
        }
    }
}
