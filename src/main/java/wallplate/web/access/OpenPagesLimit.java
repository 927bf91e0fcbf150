package wallplate.web.access;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpMethod;
import org.springframework.web.filter.OncePerRequestFilter;
import wallplate.accounts.Network;

/**
 * Limits how often one network may send a code or a photograph to the pages that are open to everybody. A whole school may
 * come from one address, so the limit is far above what a class does; each server counts for itself.
 */
final class OpenPagesLimit extends OncePerRequestFilter {

    private static final Duration WITHIN = Duration.ofMinutes(10);

    /** Whom nobody has heard of for longest is forgotten first. */
    private static final int NETWORKS = 10_000;

    private final long most;
    private final Refusal refusal;
    private final Map<String, Bucket> buckets =
            Collections.synchronizedMap(new LinkedHashMap<>(64, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
                    return size() > NETWORKS;
                }
            });

    /** @param most requests of one network within ten minutes */
    OpenPagesLimit(long most, Refusal refusal) {
        this.most = most;
        this.refusal = refusal;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !HttpMethod.POST.matches(request.getMethod())
                || !request.getRequestURI().matches("/(check|feedback)(/.*)?");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        ConsumptionProbe probe = buckets.computeIfAbsent(Network.of(request.getRemoteAddr()), network -> full())
                .tryConsumeAndReturnRemaining(1);
        if (probe.isConsumed()) {
            chain.doFilter(request, response);
        } else {
            refusal.tooOften(request, response, Duration.ofNanos(probe.getNanosToWaitForRefill()));
        }
    }

    private Bucket full() {
        return Bucket.builder()
                .addLimit(limit -> limit.capacity(most).refillGreedy(most, WITHIN))
                .build();
    }
}
