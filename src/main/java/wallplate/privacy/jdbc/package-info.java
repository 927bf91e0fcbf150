/** What is over its time and what is kept about a learner, asked of a relational database, H2 or PostgreSQL. */
@NullMarked
package wallplate.privacy.jdbc;

import org.jspecify.annotations.NullMarked;
