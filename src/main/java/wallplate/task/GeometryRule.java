package wallplate.task;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * A relation between sizes without which a detail cannot be built or drawn.
 *
 * @param key where a break of the rule is reported
 * @param needs the sizes that it compares; a task that lacks one of them is not judged by it
 * @param holds whether the sizes keep the rule
 * @param accepted what would be right for these sizes, in words
 */
public record GeometryRule(String key, List<String> needs, Predicate<Sizes> holds, Function<Sizes, String> accepted) {

    public GeometryRule {
        needs = List.copyOf(needs);
    }

    /** The first size must be more than the second one. */
    public static GeometryRule more(String key, String than, String thanLabel) {
        return new GeometryRule(
                key,
                List.of(key, than),
                sizes -> sizes.number(key) > sizes.number(than),
                sizes -> "more than %s, which is %s".formatted(thanLabel, PlainNumber.text(sizes.number(than))));
    }

    /** The first size must not be more than the second one. */
    public static GeometryRule notMore(String key, String than, String thanLabel) {
        return new GeometryRule(
                key,
                List.of(key, than),
                sizes -> sizes.number(key) <= sizes.number(than),
                sizes -> "at most %s, which is %s".formatted(thanLabel, PlainNumber.text(sizes.number(than))));
    }

    /**
     * Things at a spacing must not be more than can be drawn.
     *
     * @param needs the sizes that the length is found from
     * @param length the length, in real millimetres, over which they stand
     */
    public static GeometryRule notMoreThan(
            int most, String spacing, List<String> needs, ToDoubleFunction<Sizes> length) {
        List<String> all = new ArrayList<>(needs);
        all.add(spacing);
        return new GeometryRule(
                spacing,
                all,
                sizes -> length.applyAsDouble(sizes) <= most * sizes.number(spacing),
                sizes -> "at least %s, so that no more than %d of them are drawn"
                        .formatted(PlainNumber.text(Math.ceil(length.applyAsDouble(sizes) / most)), most));
    }

    boolean isBrokenBy(Sizes sizes) {
        return needs.stream().allMatch(sizes::has) && !holds.test(sizes);
    }
}
