package wallplate.statistics;

import java.util.Optional;
import java.util.function.Function;

/** A figure, or the reason why the data cannot give it. */
public sealed interface Statistic<V> {

    /** The figure can be told. */
    record Known<V>(V value) implements Statistic<V> {}

    /**
     * The figure cannot be told.
     *
     * @param because the reason, as the end of a sentence that begins "cannot be told, because"
     */
    record Unknown<V>(String because) implements Statistic<V> {}

    static <V> Statistic<V> known(V value) {
        return new Known<>(value);
    }

    static <V> Statistic<V> unknown(String because) {
        return new Unknown<>(because);
    }

    /** The figure; empty where it cannot be told. */
    default Optional<V> told() {
        return this instanceof Known<V> known ? Optional.of(known.value()) : Optional.empty();
    }

    /** Why it cannot be told; empty where it can. */
    default String because() {
        return this instanceof Unknown<V> unknown ? unknown.because() : "";
    }

    /** Another figure from this one; what cannot be told stays so, for the same reason. */
    default <W> Statistic<W> map(Function<V, W> change) {
        return this instanceof Known<V> known ? known(change.apply(known.value())) : unknown(because());
    }
}
