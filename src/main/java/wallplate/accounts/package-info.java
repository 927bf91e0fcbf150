/**
 * Accounts and how somebody shows to be the one whose account it is: passwords, one-time links to set them, waits between
 * sign-ins that fail. Who may open which page is the web's business.
 *
 * <p>Learners have no account. Whoever looks around without one acts as {@link wallplate.accounts.Account#DEMONSTRATION}.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.accounts;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
