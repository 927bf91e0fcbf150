/**
 * Plane geometry on paper: points, vectors, segments, lines and transforms.
 *
 * <p>Lengths are millimetres, angles degrees counted anticlockwise from the x axis. Nothing here knows pixels,
 * drawings or tolerances of its own: a tolerance is always an argument.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.geometry;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
