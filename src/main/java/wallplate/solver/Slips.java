package wallplate.solver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import wallplate.solver.Slip.Reach;
import wallplate.solver.Slip.Reading;
import wallplate.task.PlainNumber;

/** Which known slips a drawing's values may come from. */
public final class Slips {

    /**
     * Two slips are told apart where their distances from the measured value differ by more than this share of the
     * tolerance; closer ones are listed together.
     */
    private static final double TOLD_APART = 0.5;

    private final ExpectedDrawing asked;
    private final List<ExpectedDrawing> circumstances;

    private Slips(ExpectedDrawing asked, List<ExpectedDrawing> circumstances) {
        this.asked = asked;
        this.circumstances = List.copyOf(circumstances);
    }

    /** The slips of a sheet whose pitch is right, or not known. */
    public static Slips of(ExpectedDrawing asked) {
        return new Slips(asked, List.of(asked));
    }

    /** The slips of a sheet drawn at another pitch: lengths along the slope may go by that one or by the one asked. */
    public static Slips of(ExpectedDrawing asked, double drawnPitchDegrees) {
        ExpectedDrawing asDrawn = Solver.solveAsDrawn(asked.task(), Map.of("roof.pitch", drawnPitchDegrees));
        return new Slips(asked, List.of(asked, asDrawn));
    }

    /**
     * The value that each slip would give, for every key, by key and then by slip: the hypotheses to try on a sheet.
     * Slips that fit many values, and slips of words and diagonals, are not among them.
     */
    static List<SlipValue> values(ExpectedDrawing drawing) {
        List<SlipValue> values = new ArrayList<>();
        for (Expected expected : drawing.values()) {
            for (Slip slip : applying(expected)) {
                exactSize(expected).ifPresent(size -> slip.formula().readings(expected, size, drawing).stream()
                        .filter(reading -> slip.reach() != Reach.LOOSE && !reading.isRange())
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
     * The slips that a measured value fits, the nearest first; empty where it is right, or fits none.
     *
     * <p>A slip fits where it gives, of the exact or of the rounded size, a value within the tolerance of the
     * measured one. Of several, those are kept that cannot be told apart from the nearest. A slip that many values fit
     * is named only where no other does.
     *
     * @param measured paper millimetres, degrees or a number of things
     * @param tolerance in the same unit
     */
    public List<SlipFit> fitting(String key, double measured, double tolerance) {
        Optional<Expected> expected = asked.value(key);
        if (expected.isEmpty() || isRight(expected.get(), measured, tolerance)) {
            return List.of();
        }
        List<SlipFit> fits = fits(expected.get(), measured, tolerance, false);
        return fits.isEmpty() ? fits(expected.get(), measured, tolerance, true) : fits;
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
                        expected.key(), slip.id(), slip.name(), 0, 0, sentence(slip, expected, asked, drawn, "")));
    }

    private static boolean isRight(Expected expected, double measured, double tolerance) {
        if (expected instanceof Expected.Length length) {
            return length.deviation(measured) <= tolerance;
        }
        return exactSize(expected)
                .map(size -> Math.abs(size - measured) <= tolerance)
                .orElse(true);
    }

    private List<SlipFit> fits(Expected expected, double measured, double tolerance, boolean loose) {
        Map<String, SlipFit> nearestById = new LinkedHashMap<>();
        for (Slip slip : applying(expected)) {
            if ((slip.reach() == Reach.LOOSE) == loose) {
                nearest(slip, expected, measured, tolerance)
                        .ifPresent(fit -> nearestById.merge(
                                fit.slip(), fit, (one, other) -> one.deviation() <= other.deviation() ? one : other));
            }
        }
        double best = nearestById.values().stream()
                .mapToDouble(SlipFit::deviation)
                .min()
                .orElse(0);
        return nearestById.values().stream()
                .filter(fit -> fit.deviation() <= best + TOLD_APART * tolerance)
                .sorted(Comparator.comparingDouble(SlipFit::deviation).thenComparing(SlipFit::slip))
                .toList();
    }

    /** The slip's reading that fits best: a value of its own before a range. */
    private Optional<SlipFit> nearest(Slip slip, Expected expected, double measured, double tolerance) {
        return circumstances.stream()
                .flatMap(drawing -> readings(slip, expected, drawing).stream())
                .filter(reading -> reading.isFittedBy(measured, tolerance))
                .min(Comparator.comparing(Reading::isRange)
                        .thenComparingDouble(reading -> reading.deviation(measured)))
                .map(reading -> new SlipFit(
                        expected.key(),
                        slip.id(),
                        slip.name(),
                        Math.max(reading.from(), Math.min(reading.to(), measured)),
                        reading.deviation(measured),
                        sentence(slip, expected, asked, number(measured), reading.detail())))
                // A slip whose own value still counts does not explain one that no longer does.
                .filter(fit -> !isRight(expected, fit.value(), tolerance));
    }

    /** What the slip makes of the size: each reading spans what the exact and what the rounded size gives. */
    private static List<Reading> readings(Slip slip, Expected expected, ExpectedDrawing drawing) {
        Optional<Double> exact = exactSize(expected);
        if (exact.isEmpty()) {
            return List.of();
        }
        List<Reading> ofExact = slip.formula().readings(expected, exact.get(), drawing);
        List<Reading> ofDrawn = slip.formula().readings(expected, drawnSize(expected), drawing);
        return ofExact.size() != ofDrawn.size()
                ? ofExact
                : IntStream.range(0, ofExact.size())
                        .mapToObj(i -> ofExact.get(i).with(ofDrawn.get(i)))
                        .toList();
    }

    private static List<Slip> applying(Expected expected) {
        return SlipCatalogue.all().stream()
                .filter(slip -> slip.appliesTo().test(expected))
                .toList();
    }

    private static Optional<Double> exactSize(Expected expected) {
        if (expected instanceof Expected.Length length) {
            return Optional.of(length.exactMm());
        }
        if (expected instanceof Expected.Angle angle) {
            return Optional.of(angle.degrees());
        }
        return expected instanceof Expected.Count count ? Optional.of((double) count.number()) : Optional.empty();
    }

    private static double drawnSize(Expected expected) {
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
