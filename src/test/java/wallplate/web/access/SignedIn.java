package wallplate.web.access;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import wallplate.accounts.Account;
import wallplate.accounts.Role;

/** Requests of somebody who has signed in. */
public final class SignedIn {

    private SignedIn() {}

    /** Somebody with these roles, without having gone through the page for it. */
    public static RequestPostProcessor as(long accountId, Role... roles) {
        return authentication(new Acting(new Account(
                accountId,
                "account " + accountId,
                EnumSet.copyOf(List.of(roles)),
                false,
                true,
                1,
                Instant.EPOCH,
                Optional.empty())));
    }
}
