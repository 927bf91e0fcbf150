/**
 * Marking a class set again: a changed guideline laid over the measurements that are kept, without reading a scan.
 *
 * <p>What would change is shown before it does. A mark that a person set by hand stands; where a run gives fewer marks
 * than the hand gave, the mark is written down anew with its reason. Every version of a guideline is kept with its
 * text, and who kept it and when.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"records", "marking", "measure", "solver", "task"})
package wallplate.remarking;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
