/**
 * What is kept about learners: how long each kind of data stays, everything about one learner in one file, and erasing one
 * learner so that the figures of sets stay what they were.
 *
 * <p>Erased is what leads to a person: names, candidate numbers, file names, scans and pictures of pages, and reasons in
 * free words. Marks and measurements stay, as those of nobody. Backups that were taken before still have everything.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"task", "sheet", "marking", "report", "records", "audit", "tables", "marksheets", "handouts"})
package wallplate.privacy;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
