/**
 * File formats told by their first bytes, and sizes and resolutions read from headers before anything is decoded.
 *
 * <p>Everything here takes hostile bytes: a header that makes no sense gives an empty answer, never an exception.
 */
@NullMarked
package wallplate.sheet.formats;

import org.jspecify.annotations.NullMarked;
