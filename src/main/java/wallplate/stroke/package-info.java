/**
 * Pencil lines found on a level page: centre line, ends, breadth, darkness, coverage. What they mean is not known here.
 *
 * <p>Lengths are millimetres on paper, y upwards; angles degrees anticlockwise; ink 0 for paper to 255 for black.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "sheet"})
package wallplate.stroke;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
