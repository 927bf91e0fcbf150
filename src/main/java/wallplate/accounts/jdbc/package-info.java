/** Accounts in a relational database, H2 or PostgreSQL. */
@NullMarked
package wallplate.accounts.jdbc;

import org.jspecify.annotations.NullMarked;
