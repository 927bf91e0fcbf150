/** Owners in a relational database, H2 or PostgreSQL: columns beside the records of other modules. */
@NullMarked
package wallplate.ownership.jdbc;

import org.jspecify.annotations.NullMarked;
