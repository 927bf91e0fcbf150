package wallplate.solver;

import wallplate.geometry.Segment;

/**
 * One straight line of the expected drawing.
 *
 * @param part the part it belongs to, such as {@code wall-plate}, {@code support}
 * @param index which of several like parts, from 0 at the eaves inwards; 0 where there is only one
 * @param edge which line of the part: {@code bottom}, {@code top}, {@code outer}, {@code inner}, {@code low},
 *     {@code high}, {@code end}, {@code break}, {@code cross1}, {@code cross2}, {@code hatch}
 * @param segment in paper millimetres, in the detail's own axes
 */
public record DrawnLine(String part, int index, String edge, Segment segment, LineRole role) {}
