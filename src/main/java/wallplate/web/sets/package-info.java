/** Class sets: making them, handing scans in, progress, whose sheet is whose, downloads. */
@NullMarked
package wallplate.web.sets;

import org.jspecify.annotations.NullMarked;
