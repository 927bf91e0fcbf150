/** Mark sheets of a department: making, submitting, correcting, handing out. */
@NullMarked
package wallplate.web.marksheets;

import org.jspecify.annotations.NullMarked;
