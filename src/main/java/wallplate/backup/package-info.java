/**
 * Backup and restore of everything that an installation keeps: every table and every content of the scan store, in one
 * ZIP file that any of the databases and stores can take.
 *
 * <p>The tables are found in the database itself, so that none is forgotten when one is added. Restoring goes into an
 * empty installation only.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"records", "audit"})
package wallplate.backup;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
