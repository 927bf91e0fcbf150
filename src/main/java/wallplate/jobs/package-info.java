/**
 * Durable background work: each handler is one call into the modules that know the business.
 *
 * <p>A file that was handed in is one job in the database. It is read page by page; what a page gave is kept before the
 * next is begun, so that after a crash or a restart the reading goes on where it stood. A page that was begun twice
 * and never came to an end is set aside.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"task", "sheet", "assessment", "report", "records"})
package wallplate.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
