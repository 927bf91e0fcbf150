package wallplate.measure;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What each trait of a reading is worth, in units of log odds, as fitted to sheets of known truth and kept in
 * {@code weights.properties}.
 *
 * @param name which choice they are for, such as {@code gutter}
 * @param traits the traits' names, in the order in which readings give them
 * @param noneOffered the utility of a right reading that was not offered, as a line that was not found makes it; minus
 *     infinity for a choice in which that was not found to tell anything
 */
record Weights(String name, List<String> traits, double[] values, double noneOffered) {

    private static final String FILE = "weights.properties";

    /** The name under which the utility of a right reading that was not offered is kept. */
    static final String NONE_OFFERED = "none-offered";

    /**
     * The kept weights of a choice.
     *
     * @throws IllegalStateException where the file names other traits than the reader does, because every weight would
     *     then be in question
     */
    static Weights of(String name, List<String> traits) {
        Properties all = new Properties();
        try (InputStream in = Weights.class.getResourceAsStream(FILE)) {
            all.load(in);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("cannot read " + FILE, unreadable);
        }
        Set<String> kept = all.stringPropertyNames().stream()
                .filter(key -> key.startsWith(name + "."))
                .map(key -> key.substring(name.length() + 1))
                .filter(trait -> !trait.equals(NONE_OFFERED))
                .collect(Collectors.toCollection(TreeSet::new));
        if (!kept.equals(new TreeSet<>(traits))) {
            throw new IllegalStateException("%s names %s for %s, its reader %s".formatted(FILE, kept, name, traits));
        }
        double[] values = traits.stream()
                .mapToDouble(trait -> Double.parseDouble(all.getProperty(name + "." + trait)))
                .toArray();
        String none = all.getProperty(name + "." + NONE_OFFERED, "-Infinity");
        return new Weights(name, List.copyOf(traits), values, Double.parseDouble(none));
    }

    double utility(double[] traitsOfReading) {
        if (traitsOfReading.length != values.length) {
            throw new IllegalArgumentException(
                    "%s has %d traits, not %d".formatted(name, values.length, traitsOfReading.length));
        }
        double sum = 0;
        for (int trait = 0; trait < values.length; trait++) {
            sum += values[trait] * traitsOfReading[trait];
        }
        return sum;
    }
}
