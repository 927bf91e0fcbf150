/**
 * Invented learners' sheets with their truth: sections through the eaves, drawn in pencil and captured by scanners and
 * telephones that exist only here.
 *
 * <p>The geometry is written anew from the description of the detail and uses nothing of the solver, so that the two
 * check each other. Lengths are millimetres on paper unless a name says otherwise; a sheet's origin is its lower left
 * corner with y up; pixels count x to the right and y down with whole numbers at pixel corners. Everything follows from
 * a seed: the same seed gives the same bytes.
 */
@NullMarked
package wallplate.samples;

import org.jspecify.annotations.NullMarked;
