package wallplate.solver;

import java.util.OptionalDouble;

/**
 * A value beyond the measured keys that follows from a task, with the working that a learner would write.
 *
 * @param id such as {@code roof.rise}
 * @param label in the trade's words
 * @param value real millimetres, or a plain number where the unit says otherwise
 * @param unit such as {@code mm}, {@code %}; empty for numbers of things
 * @param paperMm the length on paper, for lengths
 */
public record DerivedValue(
        String id, String label, double value, String unit, OptionalDouble paperMm, String working) {}
