/**
 * The section through a lean-to roof between a low and a high wall plate: the parts of a roof section, and the high wall.
 *
 * <p>The rafter's underside passes through the low plate's top outer corner, the heel point, and through the high plate's
 * top inner corner. Rafter and covering end plumb over the far face of the high wall.
 */
@NullMarked
package wallplate.solver.monopitch;

import org.jspecify.annotations.NullMarked;
