package wallplate.accounts;

import java.util.Map;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/** How passwords are hashed. */
@Configuration(proxyBeanMethods = false)
class AccountsConfiguration {

    private static final String NOW = "argon2";

    /**
     * Argon2id with the parameters of the OWASP Password Storage Cheat Sheet: 19 MiB, two passes, one lane. The method
     * stands before each hash, so that it can change; bcrypt is read for whoever brings such hashes along.
     */
    @Bean
    PasswordEncoder passwordEncoder() {
        return new HashesInTurn(new DelegatingPasswordEncoder(
                NOW,
                Map.of(
                        NOW, new Argon2PasswordEncoder(16, 32, 1, 19 * 1024, 2),
                        "bcrypt", new BCryptPasswordEncoder(12))));
    }
}
