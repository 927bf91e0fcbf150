/** One sheet: the level scan with what was measured, the criteria beside it, and the teacher's decisions. */
@NullMarked
package wallplate.web.sheet;

import org.jspecify.annotations.NullMarked;
