/**
 * The check of a brief: rules that tell what is possible but unusual, each with its source. What is impossible is refused
 * when a task is read.
 *
 * <p>Limits of makers and of foreign codes are named as such. None of them is a design rule for a real roof.
 */
@NullMarked
package wallplate.solver.brief;

import org.jspecify.annotations.NullMarked;
