/** The learner's own feedback, opened with a code, and the teacher's list of codes. Nothing here asks for a sign-in. */
@NullMarked
package wallplate.web.feedback;

import org.jspecify.annotations.NullMarked;
