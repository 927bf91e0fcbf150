/** What is written to the audit trail, and the page that shows it. */
@NullMarked
package wallplate.web.audit;

import org.jspecify.annotations.NullMarked;
