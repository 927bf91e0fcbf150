package wallplate.web.audit;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import wallplate.audit.AuditTrail;
import wallplate.web.page.Person;

/**
 * Writes every change that a page made, and every export, to the audit trail: an address that is not named here as
 * harmless is written, so that a new page cannot be forgotten. What was refused is not written, because it changed
 * nothing.
 *
 * <p>The entry is written after the change, not with it: a server that dies between the two leaves a change without entry.
 */
@Configuration(proxyBeanMethods = false)
class AuditWriting implements WebMvcConfigurer, HandlerInterceptor {

    /** They compute or ask for a code and keep nothing. */
    private static final Set<String> CHANGES_NOTHING = Set.of(
            "/check", "/check/{code}", "/feedback", "/tasks/preview", "/tasks/draw", "/tasks/{id}/guideline/criterion");

    private static final Set<String> EXPORT_ENDINGS = Set.of(".csv", ".xlsx", ".zip", "/result.json", "/feedback.pdf");

    private final AuditTrail trail;

    AuditWriting(AuditTrail trail) {
        this.trail = trail;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public void afterCompletion(
            HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable Exception failure) {
        Object pattern = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
        if (handler instanceof HandlerMethod && pattern != null && failure == null && response.getStatus() < 400) {
            String act = request.getMethod() + " " + pattern;
            if (isWritten(request.getMethod(), pattern.toString())) {
                trail.append(Person.name(request.getUserPrincipal()), act, request.getRequestURI());
            }
        }
    }

    private static boolean isWritten(String method, String pattern) {
        if (HttpMethod.GET.matches(method)) {
            return EXPORT_ENDINGS.stream().anyMatch(pattern::endsWith) && !pattern.startsWith("/feedback");
        }
        return !HttpMethod.HEAD.matches(method) && !CHANGES_NOTHING.contains(pattern);
    }
}
