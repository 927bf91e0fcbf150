/** What marks say beyond one sheet: the criteria of a set, the growth of a learner. */
@NullMarked
package wallplate.web.analysis;

import org.jspecify.annotations.NullMarked;
