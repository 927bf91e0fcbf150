/**
 * From a drawing task to the expected drawing: every part's lines on paper, every key's exact and drawn value with
 * its working, the slips that learners make and the value each would give.
 *
 * <p>Paper lengths are millimetres in the detail's own axes: origin at the heel point, x towards the inside of the
 * building, y up. Nothing here knows scans or marks.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task"})
package wallplate.solver;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
