/**
 * Figures that say how well markers agree and how criteria sort learners.
 *
 * <p>A figure that the data cannot give is a {@link wallplate.statistics.Statistic.Unknown} with its reason, never NaN:
 * one marker, one sheet, marks that do not vary. Confidence intervals are 95 % and two-sided. Quantiles and correlations
 * come from Hipparchus; what it does not have is written here and tested against published worked examples.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.statistics;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
