/** Workbooks of spreadsheet programs. */
@NullMarked
package wallplate.tables.xlsx;

import org.jspecify.annotations.NullMarked;
