/**
 * Pencil lines found on a level page: centre line, ends, width, darkness, coverage. What they mean is not known here.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"geometry", "sheet"})
package wallplate.stroke;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
