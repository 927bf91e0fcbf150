/**
 * The plane work of reading a sheet: the map from millimetres to pixels, strokes fitted in the picture, the drawing's
 * level direction, the reference bar, which way up a page is.
 *
 * <p>Millimetres run x right and y up, pixels x right and y down with whole numbers at pixel corners. Nothing here knows
 * a picture library.
 */
@NullMarked
package wallplate.sheet.page;

import org.jspecify.annotations.NullMarked;
