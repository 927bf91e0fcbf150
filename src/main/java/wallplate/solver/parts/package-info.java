/**
 * The parts that sections through roofs are put together from, one class each: its lines on paper and its keys.
 *
 * <p>A part knows the roof's lines through a {@link wallplate.solver.parts.RoofFrame} and nothing of the detail that uses
 * it, so that another detail is another list of parts. All places are paper millimetres, origin at the heel point, x to
 * the inside of the building, y up.
 */
@NullMarked
package wallplate.solver.parts;

import org.jspecify.annotations.NullMarked;
