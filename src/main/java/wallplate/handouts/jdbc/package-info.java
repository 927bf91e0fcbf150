/** Prepared files in their table. */
@NullMarked
package wallplate.handouts.jdbc;

import org.jspecify.annotations.NullMarked;
