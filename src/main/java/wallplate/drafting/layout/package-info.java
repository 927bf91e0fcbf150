/**
 * Where everything goes on the sheet: frame and title block, the drawing with its dimensions, labels and their leaders.
 *
 * <p>Dimensions are planned in the detail's own axes, labels on the sheet, because a label must find room among what is
 * already there. Parts and edges are found by name: a detail that lacks a part simply gets neither its dimension nor its
 * label, and a new part with the usual edges needs nothing here.
 */
@NullMarked
package wallplate.drafting.layout;

import org.jspecify.annotations.NullMarked;
