package wallplate.sheet.page;

import wallplate.geometry.Segment;

/**
 * A line that a learner ruled, over its whole length.
 *
 * @param segment its centre line
 * @param deviationDegrees how far its direction may be from that of the stroke on the paper, one standard deviation
 */
public record RuledLine(Segment segment, double deviationDegrees) {}
