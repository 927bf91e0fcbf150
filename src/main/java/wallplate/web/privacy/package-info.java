/** How long data stays, everything about one learner, and erasing one learner. */
@NullMarked
package wallplate.web.privacy;

import org.jspecify.annotations.NullMarked;
