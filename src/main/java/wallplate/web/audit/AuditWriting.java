package wallplate.web.audit;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;
import org.springframework.http.HttpMethod;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionStatus;
import org.springframework.transaction.support.DefaultTransactionDefinition;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.AsyncHandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import wallplate.audit.AuditTrail;
import wallplate.audit.AuditedEvent;
import wallplate.web.page.Person;

/**
 * Writes every change that a page made, and every export, to the audit trail: an address that is not named here as
 * harmless is written, so that a new page cannot be forgotten. What was refused is not written, because it changed
 * nothing.
 *
 * <p>The whole of a changing request is one transaction, and its entries are the last thing in it: there is no change
 * without its entry and no entry without its change. The trail's end, which only one may hold at a time, is held for that
 * moment only. Uploads are the exception: many seconds may pass while a store takes a file, so each file is a step of its own
 * with an entry of its own.
 */
@Configuration(proxyBeanMethods = false)
class AuditWriting implements WebMvcConfigurer, AsyncHandlerInterceptor {

    /** They compute or ask for a code and keep nothing, or write their own entry. */
    private static final Set<String> CHANGES_NOTHING = Set.of(
            "/sign-in", "/sign-out", "/set-password", "/language", "/check", "/check/{code}", "/check/{code}/end", "/feedback", "/tasks/preview", "/tasks/draw", "/tasks/{id}/guideline/criterion");

    /** They lay contents into the scan store, each file in a step of its own. */
    private static final Set<String> OWN_STEPS = Set.of("/class-sets/{id}/scans", "/class-sets/{id}/scans/parts");

    private static final Set<String> EXPORT_ENDINGS = Set.of(".csv", ".xlsx", ".zip", "/result.json", "/feedback.pdf", "/mark-sheet.pdf");

    private static final int REFUSED = 400;

    /** An export that is not there yet is none. */
    private static final int SENT_ELSEWHERE = 300;

    private static final String STEP = AuditWriting.class.getName() + ".step";
    private static final String EVENTS = AuditWriting.class.getName() + ".events";

    private final AuditTrail trail;
    private final PlatformTransactionManager transactions;

    AuditWriting(AuditTrail trail, PlatformTransactionManager transactions) {
        this.trail = trail;
        this.transactions = transactions;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod && isOneStep(request)) {
            request.setAttribute(STEP, transactions.getTransaction(new DefaultTransactionDefinition()));
        }
        return true;
    }

    /** Before the answer goes out, so that nobody is told of a change that is not kept. */
    @Override
    public void postHandle(
            HttpServletRequest request,
            HttpServletResponse response,
            Object handler,
            @Nullable ModelAndView page) {
        if (request.getAttribute(STEP) != null) {
            boolean isRefused = response.getStatus() >= REFUSED;
            if (!isRefused) {
                write(request);
            }
            end(request, !isRefused);
        }
    }

    @Override
    public void afterConcurrentHandlingStarted(HttpServletRequest request, HttpServletResponse response, Object handler) {
        postHandle(request, response, handler, null);
    }

    @Override
    public void afterCompletion(
            HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable Exception failure) {
        if (request.getAttribute(STEP) != null) {
            end(request, false);
        } else if (handler instanceof HandlerMethod
                && isWritten(request)
                && !isOneStep(request)
                && failure == null
                && response.getStatus() < (isRead(request) ? SENT_ELSEWHERE : REFUSED)) {
            write(request);
        }
    }

    private void end(HttpServletRequest request, boolean isKept) {
        TransactionStatus step = (TransactionStatus) request.getAttribute(STEP);
        request.removeAttribute(STEP);
        if (isKept) {
            transactions.commit(step);
        } else {
            transactions.rollback(step);
        }
    }

    private void write(HttpServletRequest request) {
        String person = Person.name(request.getUserPrincipal());
        events(request).forEach(event -> trail.append(person, event.act(), event.subject()));
        trail.append(person, request.getMethod() + " " + pattern(request), request.getRequestURI());
    }

    /** Kept back until the end of the request's transaction, or written at once where there is none around it. */
    @EventListener
    void happened(AuditedEvent event) {
        if (!(RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes present)) {
            trail.append(AuditTrail.THE_PROGRAM, event.act(), event.subject());
        } else if (present.getRequest().getAttribute(STEP) != null) {
            events(present.getRequest()).add(event);
        } else {
            trail.append(Person.name(present.getRequest().getUserPrincipal()), event.act(), event.subject());
        }
    }

    @SuppressWarnings("unchecked")
    private static List<AuditedEvent> events(HttpServletRequest request) {
        if (request.getAttribute(EVENTS) == null) {
            request.setAttribute(EVENTS, new ArrayList<AuditedEvent>());
        }
        return (List<AuditedEvent>) request.getAttribute(EVENTS);
    }

    private static boolean isOneStep(HttpServletRequest request) {
        return isWritten(request) && !isRead(request) && !OWN_STEPS.contains(pattern(request));
    }

    private static boolean isWritten(HttpServletRequest request) {
        String pattern = pattern(request);
        if (pattern.isEmpty() || request.getDispatcherType() == DispatcherType.ERROR) {
            return false;
        }
        if (isRead(request)) {
            return EXPORT_ENDINGS.stream().anyMatch(pattern::endsWith) && !pattern.startsWith("/feedback");
        }
        return !CHANGES_NOTHING.contains(pattern);
    }

    private static boolean isRead(HttpServletRequest request) {
        return HttpMethod.GET.matches(request.getMethod()) || HttpMethod.HEAD.matches(request.getMethod());
    }

    /** The address with names in place of its ids; empty where none fits. */
    private static String pattern(HttpServletRequest request) {
        Object pattern = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
        return pattern == null ? "" : pattern.toString();
    }
}
