package wallplate.web.page;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import wallplate.jobs.PagesFirst;

/**
 * Counts the pages that are being made, so that reading gives way to them. A file that is being sent is none: on a slow line it
 * comes for minutes and takes no time of the processor.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class PageCount extends OncePerRequestFilter {

    private static final String FILES = "multipart/";

    private final PagesFirst pages;

    PageCount(PagesFirst pages) {
        this.pages = pages;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String type = request.getContentType();
        return type != null && type.startsWith(FILES);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        pages.begin();
        try {
            chain.doFilter(request, response);
        } finally {
            pages.end();
        }
    }
}
