package wallplate.samples;

import java.util.List;
import java.util.Random;

/** Repeatable chance: the same seed gives the same sequence of draws on every machine. */
final class Chance {

    private final Random random;

    Chance(long seed) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 0x632BE59BD9B4E019L);
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A bell-shaped error around zero, never beyond two and a half times its standard deviation. */
    double error(double standardDeviation) {
        double drawn = random.nextGaussian();
        return standardDeviation * Math.max(-2.5, Math.min(2.5, drawn));
    }

    boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    /** A whole number from low to high, both included. */
    int whole(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    int sign() {
        return random.nextBoolean() ? 1 : -1;
    }

    <T> T oneOf(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    @SafeVarargs
    final <T> T oneOf(T... choices) {
        return choices[random.nextInt(choices.length)];
    }

    /** A seed for an independent sequence: what is drawn from it leaves this sequence where it stands. */
    long seed() {
        return random.nextLong();
    }

    Chance fork() {
        return new Chance(seed());
    }
}
