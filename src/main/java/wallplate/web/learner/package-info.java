/** The learner at home: a photograph goes in, advice comes out, nothing is kept longer than an hour. */
@NullMarked
package wallplate.web.learner;

import org.jspecify.annotations.NullMarked;
