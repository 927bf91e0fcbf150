package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.oauth2.client.OAuth2AuthorizedClient;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.security.oauth2.client.registration.InMemoryClientRegistrationRepository;
import org.springframework.security.oauth2.client.registration.SupplierClientRegistrationRepository;
import org.springframework.security.oauth2.client.web.DefaultOAuth2AuthorizationRequestResolver;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizationRequestCustomizers;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizedClientRepository;
import org.springframework.security.oauth2.core.OAuth2AuthenticationException;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.springframework.web.util.UriComponentsBuilder;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.ProviderIdentities;
import wallplate.accounts.ProviderIdentities.Bound;
import wallplate.accounts.ProviderIdentities.Identity;
import wallplate.accounts.Role;
import wallplate.audit.AuditTrail;

/**
 * Signing in through the school's own provider by OpenID Connect's authorization code flow, with state, nonce and PKCE.
 *
 * <p>An account is known by the provider's {@code iss} and {@code sub}. It is bound by its holder, signed in here; or it is
 * made at the first sign-in, where the settings say which values of a claim stand for which role. A name that is taken is
 * never joined to: whoever chose a colleague's name at the provider would become that colleague.
 */
@Component("provider")
@EnableConfigurationProperties(ProviderSettings.class)
public class SchoolProvider {

    private static final Logger LOG = LoggerFactory.getLogger(SchoolProvider.class);
    private static final String REGISTRATION = "school";
    private static final String BACK = "/login/oauth2/code/" + REGISTRATION;
    private static final String BINDING = "binding";

    /** Says in a session that it was begun by the provider. */
    private static final String CAME_BY = "by-provider";

    /** Where a provider ends its own session: OpenID Connect RP-Initiated Logout 1.0, section 2.1. */
    private static final String END_SESSION = "end_session_endpoint";

    /** How long somebody may take at the provider to bind an account. */
    private static final Duration BINDING_LASTS = Duration.ofMinutes(10);

    private final ProviderSettings settings;
    private final ProviderIdentities identities;
    private final Accounts accounts;
    private final AccountSessions sessions;
    private final AuditTrail trail;
    private final Clock clock;
    private final String address;

    /** Asked for when somebody first signs in, so that the program starts while the provider is away. */
    private final ClientRegistrationRepository registrations = new SupplierClientRegistrationRepository(
            () -> new InMemoryClientRegistrationRepository(registration()));

    SchoolProvider(
            ProviderSettings settings,
            ProviderIdentities identities,
            Accounts accounts,
            AccountSessions sessions,
            AuditTrail trail,
            Clock clock,
            @Value("${wallplate.address}") String address) {
        this.settings = settings;
        this.identities = identities;
        this.accounts = accounts;
        this.sessions = sessions;
        this.trail = trail;
        this.clock = clock;
        this.address = address;
    }

    /** Whether one can sign in through a provider. */
    public boolean isSet() {
        return settings.isSet();
    }

    /** What the button says. */
    public String name() {
        return settings.name().isEmpty() ? settings.issuer() : settings.name();
    }

    public boolean isBound(Account account) {
        return identities.isBound(account.id());
    }

    /** Whether a password opens accounts of administrators only. */
    public boolean limitsPasswords() {
        return settings.limitsPasswords();
    }

    /** Whether a password opens an account, where it is the right one. */
    public boolean opensByPassword(Account account) {
        return !settings.limitsPasswords() || account.is(Role.ADMINISTRATOR);
    }

    /** Whether a session was begun by the provider, where whoever signs out here is still signed in. */
    public boolean began(@Nullable HttpSession session) {
        return session != null && session.getAttribute(CAME_BY) != null;
    }

    /**
     * Where one signs out at the provider too, by OpenID Connect RP-Initiated Logout 1.0. No token is sent as a hint, because
     * none is kept: the provider asks whether it is meant. None where the provider has no such address, or is away.
     */
    public Optional<String> signingOutThere(HttpServletRequest request) {
        try {
            return Optional.ofNullable(registrations.findByRegistrationId(REGISTRATION))
                    .map(found -> found.getProviderDetails().getConfigurationMetadata().get(END_SESSION))
                    .map(Object::toString)
                    .map(ending -> comingBack(ending, request));
        } catch (RuntimeException away) {
            LOG.warn("the provider does not describe itself: {}", away.getClass().getName());
            return Optional.empty();
        }
    }

    private String comingBack(String ending, HttpServletRequest request) {
        String here = address.isEmpty() ? ServletUriComponentsBuilder.fromContextPath(request).toUriString() : address;
        return UriComponentsBuilder.fromUriString(ending)
                .queryParam("client_id", "{client}")
                .queryParam("post_logout_redirect_uri", "{back}")
                .encode()
                .buildAndExpand(settings.clientId(), here + "/sign-in")
                .toUriString();
    }

    /** Says that whoever comes back from the provider in this session is the holder of an account. */
    public void beginBinding(Account account, HttpServletRequest request) {
        request.getSession()
                .setAttribute(
                        BINDING,
                        "%d %d %d".formatted(account.id(), account.sessionRound(), clock.instant().getEpochSecond()));
    }

    void configure(HttpSecurity http) {
        if (!settings.isSet()) {
            return;
        }
        DefaultOAuth2AuthorizationRequestResolver requests =
                new DefaultOAuth2AuthorizationRequestResolver(registrations, "/oauth2/authorization");
        requests.setAuthorizationRequestCustomizer(OAuth2AuthorizationRequestCustomizers.withPkce());
        http.oauth2Login(login -> login.clientRegistrationRepository(registrations)
                .loginPage("/sign-in")
                .authorizedClientRepository(new NoTokensKept())
                .authorizationEndpoint(endpoint -> endpoint.authorizationRequestResolver(requests))
                .successHandler(this::cameBack)
                .failureHandler(this::failed));
    }

    private ClientRegistration registration() {
        return ClientRegistrations.fromIssuerLocation(settings.issuer())
                .registrationId(REGISTRATION)
                .clientId(settings.clientId())
                .clientSecret(settings.clientSecret())
                .scope("openid", "profile")
                .redirectUri((address.isEmpty() ? "{baseUrl}" : address) + BACK)
                .build();
    }

    private void cameBack(HttpServletRequest request, HttpServletResponse response, Authentication who)
            throws IOException {
        if (!(who.getPrincipal() instanceof OidcUser person)) {
            refuse("", response);
            return;
        }
        Identity identity = new Identity(person.getIssuer().toString(), person.getSubject());
        Optional<Account> binding = takeBinding(request);
        if (binding.isPresent()) {
            bind(identity, binding.get(), request, response);
            return;
        }
        Optional<Account> account = identities.find(identity)
                .flatMap(bound -> known(bound, person))
                .or(() -> identities.find(identity).isPresent() ? Optional.empty() : made(identity, person));
        if (account.filter(found -> !found.blocked()).isEmpty()) {
            refuse(account.map(Account::name).orElse("unknown"), response);
            return;
        }
        accounts.signedIn(account.get().id());
        begin(account.get(), "sign-in", request);
        response.sendRedirect("/");
    }

    private void begin(Account account, String act, HttpServletRequest request) {
        sessions.begin(account, request);
        request.getSession().setAttribute(CAME_BY, "yes");
        trail.append(account.name(), act, "account " + account.id() + " by the provider");
    }

    /** Whoever began to bind an account in this session, within a few minutes; it is asked for once. */
    private Optional<Account> takeBinding(HttpServletRequest request) {
        HttpSession session = request.getSession();
        if (!(session.getAttribute(BINDING) instanceof String text)) {
            return Optional.empty();
        }
        session.removeAttribute(BINDING);
        String[] parts = text.split(" ", -1);
        boolean isFresh = clock.instant()
                .isBefore(Instant.ofEpochSecond(Long.parseLong(parts[2])).plus(BINDING_LASTS));
        return accounts.find(Long.parseLong(parts[0]))
                .filter(account -> isFresh && !account.blocked() && account.sessionRound() == Integer.parseInt(parts[1]));
    }

    private void bind(Identity identity, Account account, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        boolean isBound = identities.bind(identity, account.id());
        begin(account, isBound ? "provider-bound" : "provider-bound-refused", request);
        response.sendRedirect("/account?bound=" + isBound);
    }

    private Optional<Account> known(Bound bound, OidcUser person) {
        Optional<Account> account = accounts.find(bound.account());
        if (!bound.madeThere() || !settings.makesAccounts()) {
            return account;
        }
        Set<Role> roles = settings.rolesOf(values(person.getClaim(settings.rolesClaim())));
        if (roles.isEmpty()) {
            return Optional.empty();
        }
        if (account.isPresent() && !account.get().is(Role.ADMINISTRATOR) && !account.get().roles().equals(roles)) {
            accounts.setRoles(bound.account(), roles);
        }
        return accounts.find(bound.account());
    }

    private Optional<Account> made(Identity identity, OidcUser person) {
        Set<Role> roles = settings.makesAccounts()
                ? settings.rolesOf(values(person.getClaim(settings.rolesClaim())))
                : Set.of();
        String name = Optional.ofNullable(person.getClaimAsString(settings.nameClaim())).orElse("").strip();
        return roles.isEmpty() || !Account.isName(name)
                ? Optional.empty()
                : identities.make(identity, name, roles);
    }

    /** One value, or a list of them. */
    private static Set<String> values(@Nullable Object claim) {
        if (claim instanceof Collection<?> many) {
            return many.stream().map(String::valueOf).collect(Collectors.toSet());
        }
        return claim == null ? Set.of() : Set.of(claim.toString());
    }

    private void failed(HttpServletRequest request, HttpServletResponse response, AuthenticationException failure)
            throws IOException {
        // The code only: what a provider says may name somebody.
        LOG.warn(
                "signing in through the provider failed: {}",
                failure instanceof OAuth2AuthenticationException known ? known.getError().getErrorCode() : failure.getClass());
        refuse("unknown", response);
    }

    private void refuse(String name, HttpServletResponse response) throws IOException {
        trail.append(name.isEmpty() ? "unknown" : name, "sign-in-refused", "by the provider");
        response.sendRedirect("/sign-in?provider=refused");
    }

    /** The provider's tokens are of no use here once somebody is known: they are not kept. */
    private static final class NoTokensKept implements OAuth2AuthorizedClientRepository {

        @Override
        public <T extends OAuth2AuthorizedClient> @Nullable T loadAuthorizedClient(
                String registration, Authentication who, HttpServletRequest request) {
            return null;
        }

        @Override
        public void saveAuthorizedClient(
                OAuth2AuthorizedClient client,
                Authentication who,
                HttpServletRequest request,
                HttpServletResponse response) {
            // Let go of at once.
        }

        @Override
        public void removeAuthorizedClient(
                String registration, Authentication who, HttpServletRequest request, HttpServletResponse response) {
            // There is none.
        }
    }
}
