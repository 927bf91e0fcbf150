/**
 * Mark sheets that a department signs: the learners of a class, the tasks of a term with their weights, who was absent
 * or late, and what each learner reached.
 *
 * <p>Until it is submitted a mark sheet follows the marks; then it is frozen, and a correction is a new entry with its
 * reason. How the marks are put together and rounded stands in {@link wallplate.marksheets.Reckoning}.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"records", "tables", "report", "audit", "ownership"})
package wallplate.marksheets;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
