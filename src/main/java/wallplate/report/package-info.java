/**
 * What a person gets in the hand: result files, feedback reports and mark sheets. The same result gives the same bytes;
 * no mark is computed here.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "sheet", "measure", "marking", "assessment"})
package wallplate.report;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
