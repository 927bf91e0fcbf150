package wallplate.measure;

import java.util.Arrays;
import java.util.List;

/**
 * Fits the weights of a choice to examples whose right readings are known: the most likely weights of a conditional logit
 * under a normal prior of mean 0, by gradient ascent with a step of its own for each weight (Adam, D. Kingma and J. Ba,
 * 2015). Several readings of an example may be right.
 */
final class ChoiceFit {

    /** One choice: the traits of its readings, and which of them are right. */
    record Example(double[][] traits, boolean[] right) {

        /**
         * The same choice with one more reading, that the right one was not offered. It has one trait, which is its own and
         * the last, and is right where no other reading is.
         */
        Example orNone() {
            int own = traits[0].length;
            double[][] wider = new double[traits.length + 1][own + 1];
            boolean[] rightOfWider = Arrays.copyOf(right, right.length + 1);
            boolean isOffered = false;
            for (int reading = 0; reading < traits.length; reading++) {
                System.arraycopy(traits[reading], 0, wider[reading], 0, own);
                isOffered |= right[reading];
            }
            wider[traits.length][own] = 1;
            rightOfWider[traits.length] = !isOffered;
            return new Example(wider, rightOfWider);
        }

        boolean tells() {
            boolean some = false;
            boolean all = true;
            for (boolean value : right) {
                some |= value;
                all &= value;
            }
            return some && !all;
        }
    }

    /** The prior's precision: a weight of 2 is unusual. */
    private static final double PRIOR = 0.3;

    private static final int STEPS = 2500;
    private static final double STEP = 0.03;

    private ChoiceFit() {}

    static double[] fit(List<Example> examples, int traits) {
        List<Example> telling = examples.stream().filter(Example::tells).toList();
        double[] weights = new double[traits];
        double[] mean = new double[traits];
        double[] square = new double[traits];
        for (int step = 1; step <= STEPS; step++) {
            double[] gradient = gradient(telling, weights);
            for (int trait = 0; trait < traits; trait++) {
                mean[trait] = 0.9 * mean[trait] + 0.1 * gradient[trait];
                square[trait] = 0.999 * square[trait] + 0.001 * gradient[trait] * gradient[trait];
                double unbiased = mean[trait] / (1 - Math.pow(0.9, step));
                double spread = Math.sqrt(square[trait] / (1 - Math.pow(0.999, step)));
                weights[trait] += STEP * unbiased / (spread + 1e-8);
            }
        }
        return weights;
    }

    /** The slope of the mean log likelihood. */
    private static double[] gradient(List<Example> examples, double[] weights) {
        double[] gradient = new double[weights.length];
        for (int trait = 0; trait < weights.length; trait++) {
            gradient[trait] = -PRIOR * weights[trait] / examples.size();
        }
        for (Example example : examples) {
            double[] odds = odds(example.traits, weights);
            double all = Arrays.stream(odds).sum();
            double right = 0;
            for (int reading = 0; reading < odds.length; reading++) {
                right += example.right[reading] ? odds[reading] : 0;
            }
            for (int reading = 0; reading < odds.length; reading++) {
                double pull = (example.right[reading] ? odds[reading] / right : 0) - odds[reading] / all;
                for (int trait = 0; trait < weights.length; trait++) {
                    gradient[trait] += pull * example.traits[reading][trait] / examples.size();
                }
            }
        }
        return gradient;
    }

    /** Whether the likeliest reading under some weights is a right one. */
    static boolean isRightAtBest(Example example, double[] weights) {
        double[] odds = odds(example.traits, weights);
        int best = 0;
        for (int reading = 1; reading < odds.length; reading++) {
            best = odds[reading] > odds[best] ? reading : best;
        }
        return example.right[best];
    }

    private static double[] odds(double[][] traits, double[] weights) {
        double[] utilities = new double[traits.length];
        for (int reading = 0; reading < traits.length; reading++) {
            for (int trait = 0; trait < weights.length; trait++) {
                utilities[reading] += weights[trait] * traits[reading][trait];
            }
        }
        double most = Arrays.stream(utilities).max().orElseThrow();
        return Arrays.stream(utilities).map(utility -> Math.exp(utility - most)).toArray();
    }
}
