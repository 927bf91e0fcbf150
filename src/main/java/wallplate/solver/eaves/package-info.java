/** The section through the eaves of a pitched roof, put together from its parts. */
@NullMarked
package wallplate.solver.eaves;

import org.jspecify.annotations.NullMarked;
