/**
 * Moderation of a class set: a sample drawn by a stated rule, marked a second time without the first marks, the
 * agreement of the two, and what the department decides about it.
 *
 * <p>First marks are copied when the sample is drawn, so that a report says the same after the marks were adjusted. What
 * the second marker is given ({@link wallplate.moderation.BlindSheet}) has no place for a first mark, a verdict or a
 * measured value.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"records", "marking", "solver", "statistics", "task"})
package wallplate.moderation;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
