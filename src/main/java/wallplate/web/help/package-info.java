/** Help: one page with a section for each screen. */
@NullMarked
package wallplate.web.help;

import org.jspecify.annotations.NullMarked;
