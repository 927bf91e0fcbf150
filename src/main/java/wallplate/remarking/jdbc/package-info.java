/** Guideline versions and runs in the database. */
@NullMarked
package wallplate.remarking.jdbc;

import org.jspecify.annotations.NullMarked;
