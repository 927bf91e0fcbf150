/**
 * Class sets, sheets and where each stands, results and marks given, scans at rest. No image code.
 *
 * <p>Of the {@code sheet} module it keeps the facts of a level page, such as its calibration, never its picture.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "measure", "marking", "assessment", "sheet", "ownership"})
package wallplate.records;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
