package wallplate.solver;

/**
 * What a known slip would give for a key.
 *
 * @param key the measured key, such as {@code support.spacing}
 * @param slip the slip's id, such as {@code spacing-level}
 * @param value paper millimetres or degrees
 * @param sentence what seems to have happened and how to do it right, to the learner, kindly
 */
public record SlipValue(String key, String slip, double value, String sentence) {}
