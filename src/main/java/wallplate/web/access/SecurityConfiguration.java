package wallplate.web.access;

import jakarta.servlet.DispatcherType;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.boot.security.autoconfigure.actuate.web.servlet.EndpointRequest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.config.observation.SecurityObservationSettings;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;

/** The filters that every request passes, and the headers that every answer carries. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnWebApplication
class SecurityConfiguration {

    /** Load nothing from elsewhere, run no script and no style inside a page, and let nobody frame it. */
    private static final String CONTENT = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; "
            + "img-src 'self' data: blob:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private static final String PERMISSIONS =
            "camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()";

    /** Every filter would be timed on every request otherwise, and nobody looks at those times; requests as a whole are timed all the same. */
    @Bean
    SecurityObservationSettings noTimesOfSingleFilters() {
        return SecurityObservationSettings.noObservations();
    }

    /** Health and metrics, on the port of their own, which only this machine reaches unless told otherwise. */
    @Bean
    @Order(1)
    SecurityFilterChain watching(HttpSecurity http) {
        return http.securityMatcher(EndpointRequest.toAnyEndpoint())
                .authorizeHttpRequests(requests -> requests.anyRequest().permitAll())
                .build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain pages(
            HttpSecurity http,
            Refusal refusal,
            AccountSessions sessions,
            ByTheTable byTheTable,
            Visitor visitor,
            SchoolProvider provider,
            @Value("${wallplate.open-pages.most-in-ten-minutes}") long most) {
        provider.configure(http);
        return http.anonymous(nobody -> nobody.authenticationFilter(new VisitorFilter(visitor)))
                .csrf(csrf -> csrf.csrfTokenRepository(csrfTokens()))
                .addFilterBefore(new OtherSiteFilter(), CsrfFilter.class)
                .addFilterAfter(new OpenPagesLimit(most, refusal), OtherSiteFilter.class)
                .headers(SecurityConfiguration::headers)
                .securityContext(context -> context.securityContextRepository(sessions))
                .authorizeHttpRequests(requests -> requests.dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.ASYNC)
                        .permitAll()
                        .anyRequest()
                        .access(byTheTable))
                .exceptionHandling(
                        refused -> refused.accessDeniedHandler(refusal).authenticationEntryPoint(refusal))
                .formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .build();
    }

    /**
     * Tokens in a cookie that no script can read; the page carries the same token, masked anew each time. A page that
     * stood open over lunch can so still be sent, which a token in a session would not allow.
     */
    private static CookieCsrfTokenRepository csrfTokens() {
        CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
        tokens.setCookieCustomizer(cookie -> cookie.httpOnly(true).sameSite("Strict"));
        return tokens;
    }

    private static void headers(HeadersConfigurer<HttpSecurity> headers) {
        headers.contentSecurityPolicy(content -> content.policyDirectives(CONTENT))
                .contentTypeOptions(Customizer.withDefaults())
                .frameOptions(HeadersConfigurer.FrameOptionsConfig::deny)
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(permissions -> permissions.policy(PERMISSIONS))
                .crossOriginOpenerPolicy(opener -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .crossOriginResourcePolicy(resource -> resource.policy(CrossOriginResourcePolicy.SAME_ORIGIN));
    }
}
