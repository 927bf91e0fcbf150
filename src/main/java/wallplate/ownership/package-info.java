/**
 * Whose records are: each task, class, class set and mark sheet belongs to an account or to nobody, each sample is given to
 * a second marker, and everything else belongs to what it is a part of. Who may do what with that is the web's business.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.ownership;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
