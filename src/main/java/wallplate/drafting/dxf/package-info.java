/**
 * Pictures as ASCII DXF of release 2000 (AC1015), for classrooms that draw with a computer.
 *
 * <p>A drawing stands in model space at real size, one unit a millimetre, its sheet enlarged around it: plotted at the
 * task's scale it fills its sheet. Layers are named by part and kind of line.
 */
@NullMarked
package wallplate.drafting.dxf;

import org.jspecify.annotations.NullMarked;
