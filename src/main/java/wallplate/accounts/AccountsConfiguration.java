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
     * Argon2id with the cheapest of the equally strong sets of parameters in the OWASP Password Storage Cheat Sheet: 7 MiB, five passes, one
     * lane, a tenth to a fifth less processor time than 19 MiB with two. Method and parameters stand before each hash, so that they can change: who
     * signs in is hashed anew. bcrypt is read for whoever brings such hashes along.
     */
    @Bean
    PasswordEncoder passwordEncoder() {
        return new HashesInTurn(new DelegatingPasswordEncoder(
                NOW,
                Map.of(
                        NOW, new Argon2PasswordEncoder(16, 32, 1, 7 * 1024, 5),
                        "bcrypt", new BCryptPasswordEncoder(12))));
    }
}
