/**
 * Durable background work: each handler is one call into the modules that know the business.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"task", "solver", "assessment", "records", "report", "sheet"})
package wallplate.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
