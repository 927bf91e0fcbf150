/** Signing in and out, one's own account, and the administrator's pages about accounts. */
@NullMarked
package wallplate.web.accounts;

import org.jspecify.annotations.NullMarked;
