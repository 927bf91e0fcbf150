/** Classes and enrolments in the database. */
@NullMarked
package wallplate.classes.jdbc;

import org.jspecify.annotations.NullMarked;
