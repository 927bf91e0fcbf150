/**
 * What is handed out of kept sheets: one sheet put together again with its marks as they stand, and files that take seconds
 * and are therefore prepared beforehand.
 *
 * <p>The feedback of a set says of what state of the set it was made, so that a page can tell that something has changed since.
 * A prepared file holds names and marks: it is kept for a day and goes with each learner that is in it.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "solver", "marking", "assessment", "sheet", "report", "records"})
package wallplate.handouts;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
