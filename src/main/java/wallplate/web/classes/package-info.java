/** Classes of a school year and their learners. */
@NullMarked
package wallplate.web.classes;

import org.jspecify.annotations.NullMarked;
