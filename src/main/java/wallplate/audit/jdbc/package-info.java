/** The trail in a relational database, H2 or PostgreSQL. */
@NullMarked
package wallplate.audit.jdbc;

import org.jspecify.annotations.NullMarked;
