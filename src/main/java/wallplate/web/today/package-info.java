/** The first page: what waits, what is being read, what came back. */
@NullMarked
package wallplate.web.today;

import org.jspecify.annotations.NullMarked;
