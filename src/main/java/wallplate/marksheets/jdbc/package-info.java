/** Mark sheets in the database. */
@NullMarked
package wallplate.marksheets.jdbc;

import org.jspecify.annotations.NullMarked;
