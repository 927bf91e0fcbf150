package wallplate.web.page;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.MDC;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Gives each request a number that stands in every line of the log that it causes, and in its answer: a word of the process and a count.
 * It is no secret; random numbers for each request would have all requests wait for one source of them.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestNumber extends OncePerRequestFilter {

    private static final String HEADER = "X-Request-Id";
    private static final String LOGGED_AS = "request";
    private static final int LENGTH_OF_THE_WORD = 8;

    private final String process = UUID.randomUUID().toString().substring(0, LENGTH_OF_THE_WORD);
    private final AtomicLong count = new AtomicLong();

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String number = process + "-" + count.incrementAndGet();
        response.setHeader(HEADER, number);
        MDC.put(LOGGED_AS, number);
        try {
            chain.doFilter(request, response);
        } finally {
            MDC.remove(LOGGED_AS);
        }
    }
}
