/**
 * Strokes matched to the parts of the drawing and measured: facts with uncertainty and evidence, never marks.
 *
 * <p>Lengths are millimetres on paper and places those of the level page, y upwards, seen with the eaves on the left; angles are
 * degrees anticlockwise, uncertainties one standard deviation, ink 0 for paper to 255 for black. A cost is a log odds against.
 *
 * <p>The expectation chooses strokes and never pulls a value. What cannot be told is {@link wallplate.measure.Finding.Uncertain}.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "sheet", "stroke"})
package wallplate.measure;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
