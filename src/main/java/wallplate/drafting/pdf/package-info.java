/**
 * Pictures as PDF at true scale: one millimetre is 72 / 25.4 points, whatever the page.
 *
 * <p>The open-licence faces are embedded, and their widths are the measure for every layout, so that a picture is laid
 * out alike on screen and in print.
 */
@NullMarked
package wallplate.drafting.pdf;

import org.jspecify.annotations.NullMarked;
