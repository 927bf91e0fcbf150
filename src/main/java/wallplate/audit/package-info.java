/**
 * The audit trail: who did what and when, each entry bound to the one before by its hash. Entries are added and read;
 * nothing here changes or removes one.
 *
 * <p>The chain shows changed, removed and reordered entries. Whoever may write to the database can make a whole new
 * chain: only a last hash that was kept elsewhere shows that.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.audit;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
