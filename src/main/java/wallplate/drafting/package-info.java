/**
 * The expected drawing put on paper: model answer, construction guide, printable sheets. No new geometry is made here.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "sheet"})
package wallplate.drafting;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
