/**
 * Picture work with OpenCV: decoding, flattening, warping, finding lines, pages and marks.
 *
 * <p>A {@code Mat} lives no longer than the method that made it and never leaves this package.
 */
@NullMarked
package wallplate.sheet.opencv;

import org.jspecify.annotations.NullMarked;
