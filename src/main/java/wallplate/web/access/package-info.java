/**
 * Who may do what: the table of addresses, the filters before every page, sessions, and what somebody sees who is
 * turned away.
 */
@NullMarked
package wallplate.web.access;

import org.jspecify.annotations.NullMarked;
