/**
 * The marking guideline and its rules: measurements become marks, each with its reason and its feedback.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"task", "solver", "measure"})
package wallplate.marking;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
