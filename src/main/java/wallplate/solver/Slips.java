package wallplate.solver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wallplate.solver.Slip.Reach;
import wallplate.solver.Slip.Reading;
import wallplate.task.PlainNumber;

/**
 * Which known slips a drawing's values may come from.
 *
 * <p>For a wrong value its possible stories are weighed by Bayes' rule: that the hand strayed from the right size, each
 * slip from each of its readings, another size altogether, and none of these. A slip is named where the slips together
 * are likelier than all the rest; how common each story is stands in {@link Slip.Reach} and here, how far this hand
 * strays is told from the sheet ({@link Hand}).
 */
public final class Slips {

    /** How probable the named slips must be together; below it those of a value of its own are not named alone. */
    private static final double SURE_ENOUGH = 0.7;

    /** A slip this much less probable than the likeliest is not named beside it. */
    private static final double WORTH_NAMING = 0.25;

    /** The same for what many values fit, beside a slip that is seldom made. */
    private static final double WORTH_NAMING_BESIDE_A_SELDOM_ONE = 0.1;

    /** The share of values that come out as they were meant. */
    private static final double AS_MEANT = 0.85;

    /** The share of values that are wrong for a reason that nobody thought of; they may lie anywhere. */
    private static final double UNEXPLAINED = 0.01;

    private final ExpectedDrawing asked;
    private final Map<String, Double> drawn;
    private final ExpectedDrawing asDrawn;
    private final Map<String, Hand> hands = new ConcurrentHashMap<>();

    private Slips(ExpectedDrawing asked, Map<String, Double> drawn) {
        this.asked = asked;
        this.drawn = Map.copyOf(drawn);
        this.asDrawn = Solver.solveAsDrawn(asked.task(), drawn);
    }

    /** The slips of a sheet of which nothing else is known. */
    public static Slips of(ExpectedDrawing asked) {
        return of(asked, Map.of());
    }

    /**
     * The slips of a sheet. What hangs on another part, such as a length along the slope, may go by that part as it was
     * asked or as it was drawn.
     *
     * @param drawn paper millimetres or degrees by measured key
     */
    public static Slips of(ExpectedDrawing asked, Map<String, Double> drawn) {
        return new Slips(asked, drawn);
    }

    /**
     * The value that each slip would give, for every key, by key and then by slip: the hypotheses to try on a sheet.
     * Slips that fit many values, the sizes of other parts, and slips of words and diagonals are not among them.
     */
    static List<SlipValue> values(ExpectedDrawing drawing) {
        List<SlipValue> values = new ArrayList<>();
        for (Expected expected : drawing.values()) {
            for (Slip slip : applying(expected)) {
                exactSize(expected).ifPresent(size -> slip.formula().readings(expected, size, drawing).stream()
                        .filter(reading -> slip.reach().isLookedFor() && !reading.isRange())
                        .map(reading -> new SlipValue(
                                expected.key(),
                                slip.id(),
                                reading.from(),
                                sentence(slip, expected, drawing, number(reading.from()), reading.detail())))
                        .forEach(values::add));
            }
        }
        return values;
    }

    /**
     * The slips that a wrong value seems to come from, the likeliest first; empty where it is right, or where no slip
     * explains it better than a hand that strayed. Slips that are nearly as likely are named together.
     *
     * @param measured paper millimetres or degrees
     * @param uncertainty one standard deviation of the measurement, in the same unit
     * @param tolerance in the same unit
     */
    public List<SlipFit> fitting(String key, double measured, double uncertainty, double tolerance) {
        Optional<Expected> expected = asked.value(key);
        if (expected.isEmpty() || deviation(expected.get(), measured) <= tolerance) {
            return List.of();
        }
        List<Story> stories = stories(expected.get(), measured, uncertainty, true);
        double all = stories.stream().mapToDouble(Story::weight).sum()
                + withoutSlip(expected.get(), measured, uncertainty);
        List<Story> likeliest = stories.stream()
                .sorted(Comparator.comparingDouble((Story story) -> -story.weight()).thenComparing(story -> story.slip().id()))
                .toList();
        return named(likeliest, all, story -> isRight(story, expected.get(), tolerance)).stream()
                .map(story -> fit(story, expected.get(), measured, story.weight() / all))
                .toList();
    }

    /** Whether a slip's own value still counts. */
    private static boolean isRight(Story story, Expected expected, double tolerance) {
        Reading reading = story.reading();
        return !reading.isRange()
                && deviation(expected, reading.from()) <= tolerance
                && deviation(expected, reading.to()) <= tolerance;
    }

    /**
     * Slips with values of their own, where they are likelier than the rest; else all slips, where all together are likely
     * enough. Beside a slip that is seldom made, what many values fit is named, too.
     */
    private static List<Story> named(List<Story> likeliest, double all, Predicate<Story> isRight) {
        List<Story> own = likeliest.stream().filter(story -> !story.isLoose()).toList();
        boolean isOwnSure = sum(own) >= SURE_ENOUGH * all;
        // Beside what many values fit, a slip that by itself would have come out right explains nothing.
        List<Story> telling = isOwnSure
                ? own
                : likeliest.stream().filter(story -> !isRight.test(story)).toList();
        if (telling.isEmpty() || sum(telling) < SURE_ENOUGH * all) {
            return List.of();
        }
        Story first = telling.get(0);
        Stream<Story> nearlyAsLikely =
                telling.stream().filter(story -> story.weight() >= WORTH_NAMING * first.weight());
        Stream<Story> besideASeldomOne = likeliest.stream()
                .filter(story -> story.isLoose()
                        && first.slip().reach() == Reach.SELDOM
                        && story.weight() >= WORTH_NAMING_BESIDE_A_SELDOM_ONE * first.weight());
        return once(Stream.concat(nearlyAsLikely, besideASeldomOne).distinct());
    }

    /** A slip that is named for a value of its own and for the loose rest is one slip. */
    private static List<Story> once(Stream<Story> stories) {
        return List.copyOf(stories.collect(Collectors.toMap(
                        story -> story.slip().id(), Function.identity(), Story::with, LinkedHashMap::new))
                .values());
    }

    private static double sum(List<Story> stories) {
        return stories.stream().mapToDouble(Story::weight).sum();
    }

    private SlipFit fit(Story story, Expected expected, double measured, double confidence) {
        Reading reading = story.reading();
        return new SlipFit(
                expected.key(),
                story.slip().id(),
                story.slip().name(),
                Math.max(reading.from(), Math.min(reading.to(), measured)),
                reading.deviation(measured),
                confidence,
                !reading.isRange(),
                sentence(story.slip(), expected, asked, number(measured), reading.detail()));
    }

    /**
     * A slip with its likeliest reading.
     *
     * @param weight of all its readings: share times density
     */
    private record Story(Slip slip, Reading reading, double best, double weight) {

        /** Whether it has no reading but those that many values fit. */
        boolean isLoose() {
            return slip.reach() == Reach.LOOSE;
        }

        Story with(Story other) {
            Story nearer = best >= other.best ? this : other;
            return new Story(nearer.slip, nearer.reading, nearer.best, weight + other.weight);
        }
    }

    private Hand hand(Expected judged) {
        return hands.computeIfAbsent(judged.key(), key -> Hand.of(asked, drawn, key));
    }

    /** The hand that strayed, and what nobody thought of. */
    private double withoutSlip(Expected expected, double measured, double uncertainty) {
        return AS_MEANT * hand(expected).density(expected, measured, uncertainty)
                + UNEXPLAINED / anywhere(expected);
    }

    /** All degrees of a quarter, or ten times a length and what fits on a small sheet. */
    private static double anywhere(Expected expected) {
        return expected instanceof Expected.Angle ? 90 : 10 * exactSize(expected).orElse(0.0) + 100;
    }

    private List<Story> stories(Expected expected, double measured, double uncertainty, boolean withPartners) {
        return applying(expected).stream()
                .filter(slip -> withPartners
                        || SlipCatalogue.partner(slip, expected.key()).isEmpty())
                .flatMap(slip -> story(slip, expected, measured, uncertainty).stream())
                .toList();
    }

    /** Empty where the slip makes nothing of this size. */
    private Optional<Story> story(Slip slip, Expected expected, double measured, double uncertainty) {
        double beside = SlipCatalogue.partner(slip, expected.key())
                .map(partner -> evidenceOf(partner, slip, uncertainty))
                .orElse(1.0);
        return Stream.of(Rounding.values())
                .flatMap(rounding -> {
                    List<Reading> readings = allReadings(slip, expected, rounding);
                    double share = slip.reach().share() / readings.size();
                    return readings.stream().map(reading -> {
                        double density = hand(expected).density(rounding, reading, expected, measured, uncertainty);
                        double weight = share * density * beside;
                        return new Story(slip, reading, weight, weight);
                    });
                })
                .reduce(Story::with);
    }

    /**
     * How much more probable the partner's value is with this slip than without; 1 where it was not measured. Either way
     * another slip may have spoiled it, so that it then says nothing.
     */
    private double evidenceOf(String partner, Slip slip, double uncertainty) {
        Optional<Expected> expected = asked.value(partner);
        Double measured = drawn.get(partner);
        if (expected.isEmpty() || measured == null) {
            return 1;
        }
        double spoiled = sum(stories(expected.get(), measured, uncertainty, false));
        double without = withoutSlip(expected.get(), measured, uncertainty) + spoiled;
        double with = AS_MEANT * density(slip, expected.get(), measured, uncertainty)
                + UNEXPLAINED / anywhere(expected.get())
                + spoiled;
        return with / without;
    }

    /** The probability density of a value for which the slip was made. */
    private double density(Slip slip, Expected expected, double measured, double uncertainty) {
        Hand hand = hand(expected);
        return Stream.of(Rounding.values())
                .mapToDouble(rounding -> allReadings(slip, expected, rounding).stream()
                        .mapToDouble(reading -> hand.density(rounding, reading, expected, measured, uncertainty))
                        .average()
                        .orElse(0))
                .sum();
    }

    /** By the other parts as they were asked and, for a slip that hangs on them, as they were drawn. */
    private List<Reading> allReadings(Slip slip, Expected expected, Rounding rounding) {
        Stream<Reading> asAsked = readings(slip, expected, rounding, asked);
        return slip.reach().isOfTheKey()
                ? Stream.concat(asAsked, readings(slip, expected, rounding, asDrawn)).distinct().toList()
                : asAsked.toList();
    }

    /** The slip that a wrong word fits, such as the eaves on the other side; empty where the word is right. */
    public Optional<SlipFit> fitting(String key, String word) {
        return asked.value(key)
                .filter(expected ->
                        expected instanceof Expected.Word right && !right.word().equals(word))
                .flatMap(expected -> withoutNumber(expected, word));
    }

    /** The slip that a missing mark of the drawing fits, such as diagonals not drawn; empty where it is as asked. */
    public Optional<SlipFit> fitting(String key, boolean yes) {
        return asked.value(key)
                .filter(expected -> expected instanceof Expected.YesNo right && right.yes() && !yes)
                .flatMap(expected -> withoutNumber(expected, ""));
    }

    private Optional<SlipFit> withoutNumber(Expected expected, String drawn) {
        return applying(expected).stream()
                .findFirst()
                .map(slip -> new SlipFit(
                        expected.key(), slip.id(), slip.name(), 0, 0, 1, true, sentence(slip, expected, asked, drawn, "")));
    }

    /** Nothing for what has no size. */
    private static double deviation(Expected expected, double measured) {
        if (expected instanceof Expected.Size size) {
            return size.deviation(measured);
        }
        return exactSize(expected).map(size -> Math.abs(size - measured)).orElse(0.0);
    }

    /**
     * What the slip makes of the size: a size that was worked out wrongly is rounded when it is set off, one that was
     * rounded and set off wrongly comes out as it does. Angles are not rounded.
     */
    private static Stream<Reading> readings(Slip slip, Expected expected, Rounding rounding, ExpectedDrawing drawing) {
        Optional<Double> exact = exactSize(expected);
        if (exact.isEmpty()) {
            return Stream.of();
        }
        Stream<Reading> workedOut = slip.formula().readings(expected, exact.get(), drawing).stream();
        if (!(expected instanceof Expected.Length)) {
            return workedOut;
        }
        Stream<Reading> setOff = rounding.of(exact.get()).stream()
                .flatMap(size -> slip.formula().readings(expected, size, drawing).stream());
        return Stream.concat(workedOut.flatMap(reading -> reading.rounded(rounding)), setOff)
                .distinct();
    }

    private static List<Slip> applying(Expected expected) {
        return SlipCatalogue.all().stream()
                .filter(slip -> slip.appliesTo().test(expected))
                .toList();
    }

    static Optional<Double> exactSize(Expected expected) {
        if (expected instanceof Expected.Length length) {
            return Optional.of(length.exactMm());
        }
        if (expected instanceof Expected.Angle angle) {
            return Optional.of(angle.degrees());
        }
        return expected instanceof Expected.Count count ? Optional.of((double) count.number()) : Optional.empty();
    }

    static double drawnSize(Expected expected) {
        boolean drawn = expected instanceof Expected.Length length && length.drawnMm() > 0;
        return drawn
                ? ((Expected.Length) expected).drawnMm()
                : exactSize(expected).orElse(0.0);
    }

    private static String sentence(Slip slip, Expected expected, ExpectedDrawing drawing, String drawn, String detail) {
        String what = Solver.keys(drawing.task()).stream()
                .filter(key -> key.key().equals(expected.key()))
                .findFirst()
                .map(key -> key.labelFor(drawing.task()))
                .orElse(expected.key());
        String supports = drawing.task().sizes().word("support.name").orElse("support") + "s";
        return slip.sentence()
                .replace("{what}", what)
                .replace("{supports}", supports)
                .replace("{asked}", asked(expected))
                .replace("{drawn}", drawn)
                .replace("{detail}", detail)
                .replace("  ", " ");
    }

    private static String asked(Expected expected) {
        return expected instanceof Expected.Word word
                ? word.word().toLowerCase(Locale.ROOT)
                : exactSize(expected).map(size -> PlainNumber.text(size, 2)).orElse("");
    }

    /** To the tenth, without a sign: learners are told sizes, not directions. */
    private static String number(double value) {
        return PlainNumber.text(Math.abs(value), 1);
    }
}
