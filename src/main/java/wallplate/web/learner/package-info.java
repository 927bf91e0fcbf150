/** The learner at home: a photograph goes in, advice comes out, nothing is kept. */
@NullMarked
package wallplate.web.learner;

import org.jspecify.annotations.NullMarked;
