package wallplate.web.access;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.http.MediaType;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.ViewResolver;
import wallplate.web.page.Words;

/** What somebody sees who is turned away: a plain page with a way on. */
@Component
@ConditionalOnWebApplication
class Refusal implements AccessDeniedHandler {

    private final ViewResolver views;
    private final Words words;

    Refusal(@Qualifier("thymeleafViewResolver") ViewResolver views, Words words) {
        this.views = views;
        this.words = words;
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException refused)
            throws IOException, ServletException {
        if (response.isCommitted()) {
            return;
        }
        String which = refused instanceof CsrfException ? "refused.old" : "refused.other";
        response.setStatus(HttpServletResponse.SC_FORBIDDEN);
        response.setContentType(MediaType.TEXT_HTML_VALUE + ";charset=UTF-8");
        show(request, response, Map.of("title", words.say(which + ".title"), "sentence", words.say(which + ".sentence")));
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
