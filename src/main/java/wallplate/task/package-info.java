/**
 * The drawing task: what a learner is asked to draw, read from its YAML file and checked, all faults at once.
 *
 * <p>Real sizes are millimetres and angles degrees. Nothing here solves or marks.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.task;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
