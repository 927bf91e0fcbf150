/** Help, a page for each screen. */
@NullMarked
package wallplate.web.help;

import org.jspecify.annotations.NullMarked;
