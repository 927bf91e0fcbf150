/** Moderation: drawing a sample, marking it blind, the comparison and the decision. */
@NullMarked
package wallplate.web.moderation;

import org.jspecify.annotations.NullMarked;
