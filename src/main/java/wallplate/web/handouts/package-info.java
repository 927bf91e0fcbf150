/** Files that take seconds to be made: asked for, followed, and saved. */
@NullMarked
package wallplate.web.handouts;

import org.jspecify.annotations.NullMarked;
