/**
 * Lists that people keep in spreadsheets: rows of cells read from and written to CSV (RFC 4180) and XLSX (ISO/IEC
 * 29500).
 *
 * <p>Reading gives texts with the line that each stood on, and names every fault with its line. Writing keeps numbers
 * numbers where the format has them, and writes no text that a spreadsheet would take for a formula. What the columns
 * mean is none of its business.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package wallplate.tables;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
