/**
 * What is to be inked on a page, before any file format: lines, lettering and filled areas.
 *
 * <p>Places are millimetres on paper, x to the right and y up from the lower left corner of the page. Every piece of
 * ink remembers the part of the drawing that it belongs to, so that a page, a file or a layer can address it.
 */
@NullMarked
package wallplate.drafting.paper;

import org.jspecify.annotations.NullMarked;
