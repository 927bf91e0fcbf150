/**
 * Classes of a school year and their learners over the years: lists taken in and handed out, learners moved between
 * classes with their history kept, candidate numbers instead of names where wanted.
 *
 * <p>A learner's time in one class is an enrolment. Nothing here deletes one: who leaves a class keeps the sheets and
 * marks of that time. The pasted list of a single class set is no class of this kind.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"tables", "audit", "ownership"})
package wallplate.classes;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
