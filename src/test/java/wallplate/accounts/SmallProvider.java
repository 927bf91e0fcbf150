package wallplate.accounts;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.nimbusds.oauth2.sdk.AuthorizationCode;
import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.ParseException;
import com.nimbusds.oauth2.sdk.TokenRequest;
import com.nimbusds.oauth2.sdk.auth.ClientSecretBasic;
import com.nimbusds.oauth2.sdk.http.HTTPRequest;
import com.nimbusds.oauth2.sdk.pkce.CodeChallenge;
import com.nimbusds.oauth2.sdk.pkce.CodeChallengeMethod;
import com.nimbusds.oauth2.sdk.token.BearerAccessToken;
import com.nimbusds.openid.connect.sdk.AuthenticationRequest;
import com.nimbusds.openid.connect.sdk.AuthenticationSuccessResponse;
import com.nimbusds.openid.connect.sdk.LogoutRequest;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * An OpenID Connect provider on the loopback, made with the Nimbus SDK: discovery, authorization codes with PKCE, tokens
 * signed with RS256, its keys, and RP-initiated logout. Whoever is set as {@link #person} is the one who signs in.
 */
final class SmallProvider implements AutoCloseable {

    static final String CLIENT = "wallplate";
    static final String SECRET = "not much of a secret, but long enough";

    private final HttpServer server;
    private final RSAKey key;
    private final Map<String, AuthenticationRequest> given = new ConcurrentHashMap<>();

    /** The claims of whoever signs in next, {@code sub} among them. */
    volatile Map<String, Object> person = Map.of();

    /** What is put in place of the right claims, to see whether it is noticed. */
    volatile Map<String, Object> falsified = Map.of();

    /** Signs with a key that is not among those that are published. */
    volatile boolean signsWithAnotherKey;

    SmallProvider() throws IOException, JOSEException {
        key = new RSAKeyGenerator(2048).keyID("one").generate();
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/.well-known/openid-configuration", this::describe);
        server.createContext("/keys", exchange -> json(exchange, new JWKSet(key.toPublicJWK()).toString()));
        server.createContext("/authorize", this::authorize);
        server.createContext("/token", this::token);
        server.createContext("/end", this::end);
        server.start();
    }

    String issuer() {
        return "http://localhost:" + server.getAddress().getPort();
    }

    private void describe(HttpExchange exchange) throws IOException {
        json(
                exchange,
                """
                {"issuer":"%1$s","authorization_endpoint":"%1$s/authorize","token_endpoint":"%1$s/token",
                 "jwks_uri":"%1$s/keys","end_session_endpoint":"%1$s/end","response_types_supported":["code"],"subject_types_supported":["public"],
                 "id_token_signing_alg_values_supported":["RS256"],"scopes_supported":["openid","profile"],
                 "token_endpoint_auth_methods_supported":["client_secret_basic"]}"""
                        .formatted(issuer()));
    }

    private void authorize(HttpExchange exchange) throws IOException {
        try {
            AuthenticationRequest request = AuthenticationRequest.parse(exchange.getRequestURI().getRawQuery());
            if (!request.getClientID().getValue().equals(CLIENT)
                    || request.getNonce() == null
                    || request.getState() == null
                    || !CodeChallengeMethod.S256.equals(request.getCodeChallengeMethod())) {
                answer(exchange, 400, "a request without client, state, nonce or challenge");
                return;
            }
            AuthorizationCode code = new AuthorizationCode();
            given.put(code.getValue(), request);
            URI back = new AuthenticationSuccessResponse(
                            request.getRedirectionURI(), code, null, null, request.getState(), null, null)
                    .toURI();
            exchange.getResponseHeaders().set("Location", back.toString());
            answer(exchange, 302, "");
        } catch (ParseException wrong) {
            answer(exchange, 400, String.valueOf(wrong.getMessage()));
        }
    }

    private void token(HttpExchange exchange) throws IOException {
        try {
            TokenRequest request = TokenRequest.parse(asRequest(exchange));
            AuthorizationCodeGrant grant = (AuthorizationCodeGrant) request.getAuthorizationGrant();
            AuthenticationRequest asked = given.remove(grant.getAuthorizationCode().getValue());
            boolean isClient = request.getClientAuthentication() instanceof ClientSecretBasic basic
                    && basic.getClientID().getValue().equals(CLIENT)
                    && basic.getClientSecret().getValue().equals(SECRET);
            boolean isChallenge = asked != null
                    && grant.getCodeVerifier() != null
                    && CodeChallenge.compute(CodeChallengeMethod.S256, grant.getCodeVerifier())
                            .equals(asked.getCodeChallenge());
            if (!isClient || !isChallenge || !asked.getRedirectionURI().equals(grant.getRedirectionURI())) {
                answer(exchange, 400, "{\"error\":\"invalid_grant\"}");
                return;
            }
            json(
                    exchange,
                    "{\"access_token\":\"%s\",\"token_type\":\"Bearer\",\"expires_in\":60,\"id_token\":\"%s\"}"
                            .formatted(new BearerAccessToken().getValue(), idToken(asked)));
        } catch (ParseException | JOSEException wrong) {
            answer(exchange, 400, "{\"error\":\"invalid_request\"}");
        }
    }

    /** Ends its own session for a client that it knows, and says where it goes back to. */
    private void end(HttpExchange exchange) throws IOException {
        try {
            LogoutRequest request = LogoutRequest.parse(exchange.getRequestURI().getRawQuery());
            boolean isClient = request.getClientID() != null && request.getClientID().getValue().equals(CLIENT);
            answer(exchange, isClient ? 200 : 400, "back to " + request.getPostLogoutRedirectionURI());
        } catch (ParseException wrong) {
            answer(exchange, 400, String.valueOf(wrong.getMessage()));
        }
    }

    private String idToken(AuthenticationRequest asked) throws JOSEException {
        Map<String, Object> claims = new LinkedHashMap<>(person);
        claims.put("iss", issuer());
        claims.put("aud", CLIENT);
        claims.put("nonce", asked.getNonce().getValue());
        claims.put("iat", Date.from(Instant.now()));
        claims.put("exp", Date.from(Instant.now().plusSeconds(60)));
        claims.putAll(falsified);
        JWTClaimsSet.Builder set = new JWTClaimsSet.Builder();
        claims.forEach(set::claim);
        SignedJWT token = new SignedJWT(
                new JWSHeader.Builder(JWSAlgorithm.RS256).keyID(key.getKeyID()).build(), set.build());
        RSAKey signing = signsWithAnotherKey ? new RSAKeyGenerator(2048).keyID("one").generate() : key;
        token.sign(new RSASSASigner(signing));
        return token.serialize();
    }

    private static HTTPRequest asRequest(HttpExchange exchange) throws IOException {
        URL address = URI.create("http://localhost" + exchange.getRequestURI()).toURL();
        HTTPRequest request = new HTTPRequest(HTTPRequest.Method.POST, address);
        exchange.getRequestHeaders().forEach((name, values) -> request.setHeader(name, values.toArray(String[]::new)));
        request.setBody(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
        return request;
    }

    private static void json(HttpExchange exchange, String text) throws IOException {
        exchange.getResponseHeaders().set("Content-Type", "application/json");
        answer(exchange, 200, text);
    }

    private static void answer(HttpExchange exchange, int status, String text) throws IOException {
        byte[] body = text.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().putIfAbsent("Content-Type", java.util.List.of("application/json"));
        exchange.sendResponseHeaders(status, body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
