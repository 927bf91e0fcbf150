/**
 * What marks say beyond the single sheet: how the criteria of a set sort learners, how one learner grows over tasks.
 *
 * <p>It reads records and changes none. An undecided mark is a missing mark, never a mark of 0.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"records", "marking", "statistics"})
package wallplate.analysis;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
