/** Moderations in a relational database, H2 or PostgreSQL, through plain SQL. */
@NullMarked
package wallplate.moderation.jdbc;

import org.jspecify.annotations.NullMarked;
