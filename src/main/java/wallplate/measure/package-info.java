/**
 * Strokes matched to the parts of the drawing and measured: facts with uncertainty and evidence, never marks.
 *
 * <p>The expectation chooses strokes and never pulls a value. What cannot be told is {@link wallplate.measure.Finding.Uncertain}.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "task", "solver", "sheet", "stroke"})
package wallplate.measure;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
