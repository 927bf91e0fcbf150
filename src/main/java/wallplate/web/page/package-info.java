/** What every page shares: words and figures, errors, headers. */
@NullMarked
package wallplate.web.page;

import org.jspecify.annotations.NullMarked;
