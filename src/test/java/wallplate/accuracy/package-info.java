/**
 * How well sheets are measured, as figures that are kept: every change to the reading and measuring is held against
 * them.
 *
 * <p>The rules of counting are those of the shared scoring program. Lengths are millimetres on paper.
 */
@NullMarked
package wallplate.accuracy;

import org.jspecify.annotations.NullMarked;
