/** Marking guidelines: reading and changing them, their versions, and laying one over a class set again. */
@NullMarked
package wallplate.web.guideline;

import org.jspecify.annotations.NullMarked;
