/** The records in a relational database, H2 or PostgreSQL, through plain SQL. */
@NullMarked
package wallplate.records.jdbc;

import org.jspecify.annotations.NullMarked;
