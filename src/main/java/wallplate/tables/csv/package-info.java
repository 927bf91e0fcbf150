/** Comma-separated values. */
@NullMarked
package wallplate.tables.csv;

import org.jspecify.annotations.NullMarked;
