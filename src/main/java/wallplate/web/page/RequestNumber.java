package wallplate.web.page;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import org.slf4j.MDC;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Gives each request a number that stands in every line of the log that it causes, and in its answer. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestNumber extends OncePerRequestFilter {

    private static final String HEADER = "X-Request-Id";
    private static final String LOGGED_AS = "request";
    private static final int LENGTH = 13;

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String number = UUID.randomUUID().toString().substring(0, LENGTH);
        response.setHeader(HEADER, number);
        MDC.put(LOGGED_AS, number);
        try {
            chain.doFilter(request, response);
        } finally {
            MDC.remove(LOGGED_AS);
        }
    }
}
