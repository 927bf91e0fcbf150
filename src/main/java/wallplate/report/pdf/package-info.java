/**
 * Reports as PDF pages. Places on a page are millimetres from its lower left corner, x right and y up; so are sizes of
 * type and widths of lines.
 */
@NullMarked
package wallplate.report.pdf;

import org.jspecify.annotations.NullMarked;
