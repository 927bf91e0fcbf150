/** Who may do what: the chain of filters before every page, and what somebody sees who is turned away. */
@NullMarked
package wallplate.web.access;

import org.jspecify.annotations.NullMarked;
