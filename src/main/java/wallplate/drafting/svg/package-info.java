/**
 * Pictures as SVG: one millimetre of paper is one unit of the view box, y runs down as SVG has it.
 *
 * <p>Colours are {@code currentColor}, thicknesses are presentation attributes and kinds of ink are class names, so that
 * a page's own style sheet can override each of them and a content security policy needs no exception.
 */
@NullMarked
package wallplate.drafting.svg;

import org.jspecify.annotations.NullMarked;
