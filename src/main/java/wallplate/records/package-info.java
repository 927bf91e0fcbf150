/**
 * Class sets, sheets and where each stands, results and marks given, scans at rest. No image code.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "measure", "marking", "assessment"})
package wallplate.records;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
