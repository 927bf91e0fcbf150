package wallplate.solver;

/**
 * A known slip that a measured value fits.
 *
 * @param slip the slip's id
 * @param name the slip in a few words
 * @param value what the slip gives, nearest to the measured value: paper millimetres, degrees or a number of things
 * @param deviation how far the measured value lies from that
 * @param confidence the probability that it was this slip, from 0 to 1
 * @param namesACause whether it says what happened, or only that the value is off
 * @param sentence what seems to have happened and how to do it right, to the learner
 */
public record SlipFit(
        String key,
        String slip,
        String name,
        double value,
        double deviation,
        double confidence,
        boolean namesACause,
        String sentence) {}
