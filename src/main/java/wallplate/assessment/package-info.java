/**
 * The one use case: a scanned page and a task become an assessed sheet. The command and the jobs both call it.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "sheet", "measure", "marking"})
package wallplate.assessment;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
